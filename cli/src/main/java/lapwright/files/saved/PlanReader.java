package lapwright.files.saved;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.files.source.Findings;
import lapwright.files.source.Node;
import lapwright.plan.Division;
import lapwright.plan.OrderPlan;
import lapwright.plan.RunLine;
import lapwright.shop.ItemOrder;
import lapwright.shop.Need;
import lapwright.shop.RunNeed;
import lapwright.shop.Shop;
import lapwright.shop.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Reads a saved plan. Fields that it does not need, such as sums that follow from the rest, are not
 * looked at: whoever uses the plan has it checked.
 */
final class PlanReader {
  private final Findings findings;

  PlanReader(Findings findings) {
    this.findings = findings;
  }

  /** The plan; null when the file is damaged, which is reported then. */
  PlanReading.@Nullable Saved read(Node root) {
    try {
      PlanFields top = PlanFields.of(root, "", findings);
      if (top.count("format") != PlanFile.FORMAT) {
        throw top.damaged(
            "format",
            top.words("format"),
            "this version reads format " + PlanFile.FORMAT + " only");
      }
      SortedMap<String, String> inputs = new TreeMap<>();
      PlanFields digests = top.object("inputs");
      digests.entries().forEach(entry -> inputs.put(entry.key(), digests.words(entry.key())));
      List<OrderPlan> orders = new ArrayList<>();
      orders.add(order(top));
      if (top.has("more")) {
        orders.addAll(top.list("more", PlanReader::order));
      }
      return new PlanReading.Saved(top.words("planId"), orders, inputs, SavedSaving.read(top));
    } catch (PlanFields.Damaged reported) {
      return null;
    }
  }

  private static OrderPlan order(PlanFields fields) {
    Shop shop = shop(fields.object("shop"), fields.wordsIfAny("currency"));
    Map<String, List<Need>> needs = new LinkedHashMap<>();
    Map<String, List<RunNeed>> runs = new LinkedHashMap<>();
    Map<String, List<ItemOrder.Need>> items = new LinkedHashMap<>();
    fields.list("jobs", job -> readJob(job, needs, runs, items));
    Map<String, List<RunLine>> lines = new LinkedHashMap<>();
    if (fields.has("runs")) {
      fields.list("runs", line -> SavedLayout.read(line, lines));
    }
    MaterialReader materials = new MaterialReader(needs, runs, lines);
    return new OrderPlan(
        shop,
        fields.list("materials", materials::read),
        fields.has("items") ? fields.list("items", new ItemReader(items)::read) : List.of(),
        division(fields),
        fields.has("onlySuppliers") ? fields.wordList("onlySuppliers") : List.of());
  }

  private static @Nullable Division division(PlanFields fields) {
    if (!fields.has("divided")) {
      return null;
    }
    PlanFields divided = fields.object("divided");
    return guarded(
        divided,
        "jobs",
        () ->
            new Division(
                divided.money("cost"),
                divided.list(
                    "jobs",
                    part ->
                        new Division.JobPart(
                            part.words("job"),
                            part.money("alone"),
                            part.word("how", Words.ALONE),
                            part.truth("proved"),
                            part.money("pays")))));
  }

  private static Shop shop(PlanFields fields, String currency) {
    List<Supplier> suppliers =
        fields.list(
            "suppliers",
            supplier ->
                guarded(
                    supplier,
                    "supplier",
                    () ->
                        new Supplier(
                            supplier.words("supplier"),
                            supplier.has("days") ? Integer.valueOf(supplier.count("days")) : null,
                            supplier.wordsIfAny("orderBy"),
                            supplier.moneyIfAny("minimum"),
                            supplier.moneyIfAny("freight"),
                            supplier.moneyIfAny("freeFrom"),
                            supplier.mmIfAny("longestMm"),
                            supplier.word("rounds", Words.ROUNDS))));
    return guarded(
        fields,
        "name",
        () ->
            new Shop(
                fields.words("name"),
                currency,
                fields.word("units", Words.UNITS),
                fields.truth("onHandValued"),
                suppliers));
  }

  private static boolean readJob(
      PlanFields job,
      Map<String, List<Need>> needs,
      Map<String, List<RunNeed>> runs,
      Map<String, List<ItemOrder.Need>> items) {
    String name = job.words("job");
    int times = job.count("times");
    job.list(
        "pieces",
        piece -> {
          int first = piece.has("fromCopy") ? piece.count("fromCopy") : 1;
          int last = piece.has("toCopy") ? piece.count("toCopy") : times;
          Need need =
              guarded(
                  piece,
                  "qty",
                  () ->
                      new Need(
                          name,
                          job.day("due"),
                          Math.subtractExact(last, first) + 1,
                          piece.wordsIfAny("mark"),
                          piece.mm("lengthMm"),
                          piece.count("qty"),
                          piece.wordsIfAny("for"),
                          SavedRules.read(piece),
                          first));
          needs.computeIfAbsent(piece.words("material"), id -> new ArrayList<>()).add(need);
          return true;
        });
    if (job.has("runs")) {
      job.list(
          "runs",
          run -> {
            RunNeed need =
                guarded(run, "qty", () -> SavedRun.read(run, name, job.day("due"), times));
            return runs.computeIfAbsent(need.run().material(), id -> new ArrayList<>()).add(need);
          });
    }
    if (job.has("items")) {
      job.list("items", item -> readItem(name, times, job, item, items));
    }
    return true;
  }

  private static boolean readItem(
      String job,
      int times,
      PlanFields fields,
      PlanFields item,
      Map<String, List<ItemOrder.Need>> items) {
    int first = item.has("fromCopy") ? item.count("fromCopy") : 1;
    int last = item.has("toCopy") ? item.count("toCopy") : times;
    ItemOrder.Need need =
        guarded(
            item,
            "qty",
            () ->
                new ItemOrder.Need(
                    job,
                    fields.day("due"),
                    Math.subtractExact(last, first) + 1,
                    Math.toIntExact(item.number("qty")),
                    first));
    return items.computeIfAbsent(item.words("item"), name -> new ArrayList<>()).add(need);
  }

  interface Maker<T> {
    T make();
  }

  /** Records check themselves; what they refuse is damage to the file. */
  static <T> T guarded(PlanFields fields, String field, Maker<T> maker) {
    try {
      return maker.make();
    } catch (IllegalArgumentException | ArithmeticException e) {
      throw fields.damaged(field, "", "contradicts itself: " + e.getMessage());
    }
  }
}

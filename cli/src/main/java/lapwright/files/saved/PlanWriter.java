package lapwright.files.saved;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.function.ToLongFunction;
import lapwright.compare.JointChoice;
import lapwright.compare.Saving;
import lapwright.measure.LengthStyle;
import lapwright.measure.Money;
import lapwright.paperwork.Deliveries;
import lapwright.plan.Division;
import lapwright.plan.ItemPlan;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Proof;
import lapwright.shop.ItemOrder;
import lapwright.shop.Need;
import lapwright.shop.RunNeed;
import lapwright.shop.Shop;
import lapwright.shop.Supplier;
import org.jspecify.annotations.Nullable;

/** Writes the top of a plan: the shop, the jobs, the sums. */
final class PlanWriter {
  private final Json json;
  private final OrderPlan plan;
  private final LengthStyle style;

  private PlanWriter(Json json, OrderPlan plan) {
    this.json = json;
    this.plan = plan;
    this.style =
        plan.shop().units() == Shop.Units.MILLIMETRES
            ? LengthStyle.MILLIMETRES
            : LengthStyle.FEET_INCHES;
  }

  /**
   * @param orders in the order in which they were placed: the first at the top, the later ones as
   *     {@code more}
   */
  static String write(
      List<OrderPlan> orders,
      String planId,
      SortedMap<String, String> inputs,
      @Nullable Saving saving,
      List<JointChoice.Answer> joints,
      @Nullable Deliveries deliveries) {
    Json json = new Json();
    return json.text(
        () -> {
          json.number("format", PlanFile.FORMAT);
          json.words("planId", planId);
          new PlanWriter(json, orders.get(0)).order(inputs, saving);
          List<OrderPlan> more = orders.subList(1, orders.size());
          if (!more.isEmpty()) {
            json.list("more", more, order -> new PlanWriter(json, order).order(null, null));
          }
          if (!joints.isEmpty()) {
            json.list("joints", joints, new JointsWriter(json)::write);
          }
          if (deliveries != null) {
            json.object("delivery", () -> new DeliveryWriter(json).write(deliveries));
          }
        });
  }

  private void order(@Nullable SortedMap<String, String> inputs, @Nullable Saving saving) {
    json.wordsIfAny("currency", plan.shop().currency());
    if (plan.materials().stream().anyMatch(material -> material.order().isPriced())
        || plan.items().stream().anyMatch(ItemPlan::isPriced)) {
      json.money("cost", sum(MaterialPlan::cost));
      json.money("billed", billed());
      json.money("cash", sum(MaterialPlan::cash));
      json.money("lowerBound", sum(MaterialPlan::lowerBound));
    }
    json.words("proof", weakest().word());
    if (inputs != null) {
      json.object("inputs", () -> inputs.forEach(json::words));
    }
    json.object("shop", this::shop);
    if (!plan.onlySuppliers().isEmpty()) {
      json.wordList("onlySuppliers", plan.onlySuppliers());
    }
    jobs();
    SavedLayout.write(json, plan.materials(), style);
    MaterialWriter materials = new MaterialWriter(json, plan.shop(), style);
    json.list("materials", plan.materials(), materials::write);
    json.list("items", plan.items(), new ItemWriter(json, plan.shop())::write);
    Division division = plan.division();
    if (division != null) {
      json.object("divided", () -> divided(division));
    }
    if (saving != null) {
      json.object("saved", () -> SavedSaving.write(json, saving));
    }
  }

  private void divided(Division division) {
    json.money("cost", division.total());
    json.list(
        "jobs",
        division.jobs(),
        part -> {
          json.words("job", part.job());
          json.money("alone", part.alone());
          json.words("how", part.how().word());
          json.truth("proved", part.proved());
          json.money("pays", part.pays());
        });
  }

  /** Items have one figure: they are bought now, and nothing costs less. */
  private Money sum(ToLongFunction<MaterialPlan> figure) {
    long sum = 0;
    for (MaterialPlan material : plan.materials()) {
      if (material.order().isPriced()) {
        sum = Math.addExact(sum, figure.applyAsLong(material));
      }
    }
    for (ItemPlan item : plan.items()) {
      sum = item.isPriced() ? Math.addExact(sum, item.cost()) : sum;
    }
    return new Money(sum);
  }

  private Money billed() {
    Money sum = Money.ZERO;
    for (MaterialPlan material : plan.materials()) {
      for (BoughtLine line : BoughtLine.of(material, plan.shop())) {
        sum = sum.plus(line.total() == null ? Money.ZERO : Objects.requireNonNull(line.total()));
      }
    }
    for (ItemPlan item : plan.items()) {
      sum = sum.plus(ItemWriter.total(item, plan.shop()));
    }
    return sum;
  }

  private Proof weakest() {
    return plan.materials().stream()
        .map(MaterialPlan::proof)
        .max(Comparator.naturalOrder())
        .orElse(Proof.PROVED);
  }

  private void shop() {
    Shop shop = plan.shop();
    json.words("name", shop.name());
    json.words("units", shop.units().word());
    json.truth("onHandValued", shop.onHandValued());
    json.list("suppliers", shop.suppliers(), this::supplier);
  }

  private void supplier(Supplier supplier) {
    json.words("supplier", supplier.id());
    Integer days = supplier.days();
    if (days != null) {
      json.number("days", days);
    }
    json.wordsIfAny("orderBy", supplier.orderBy());
    json.money("minimum", supplier.minimum());
    json.money("freight", supplier.freight());
    json.money("freeFrom", supplier.freeFrom());
    json.mm("longestMm", supplier.longest());
    json.words("rounds", supplier.rounds().word());
  }

  /** A need, and the material it is of. */
  private record Wanted(String material, Need need) {}

  /** A need, and the item it is of. */
  private record WantedItem(String item, ItemOrder.Need need) {}

  /** What one job needs. */
  private static final class JobNeeds {
    private final String job;
    private final List<Wanted> pieces = new ArrayList<>();
    private final List<RunNeed> runs = new ArrayList<>();
    private final List<WantedItem> items = new ArrayList<>();
    private @Nullable LocalDate due;
    private int times = 1;

    private JobNeeds(String job) {
      this.job = job;
    }

    private void head(@Nullable LocalDate day, int lastCopy) {
      due = day;
      times = Math.max(times, lastCopy);
    }
  }

  private void jobs() {
    Map<String, JobNeeds> byJob = new LinkedHashMap<>();
    for (MaterialPlan material : plan.materials()) {
      for (Need need : material.order().needs()) {
        JobNeeds job = byJob.computeIfAbsent(need.job(), JobNeeds::new);
        job.head(need.due(), need.lastCopy());
        job.pieces.add(new Wanted(material.material(), need));
      }
      for (RunNeed need : material.order().runs()) {
        JobNeeds job = byJob.computeIfAbsent(need.job(), JobNeeds::new);
        job.head(need.due(), need.lastCopy());
        job.runs.add(need);
      }
    }
    for (ItemPlan item : plan.items()) {
      for (ItemOrder.Need need : item.order().needs()) {
        JobNeeds job = byJob.computeIfAbsent(need.job(), JobNeeds::new);
        job.head(need.due(), need.lastCopy());
        job.items.add(new WantedItem(item.item(), need));
      }
    }
    List<JobNeeds> firstDueFirst = new ArrayList<>(byJob.values());
    firstDueFirst.sort(
        Comparator.comparing(
                (JobNeeds job) -> job.due,
                Comparator.nullsLast(Comparator.<LocalDate>naturalOrder()))
            .thenComparing(job -> job.job));
    json.list("jobs", firstDueFirst, this::job);
  }

  private void job(JobNeeds job) {
    json.words("job", job.job);
    json.day("due", job.due);
    json.number("times", job.times);
    json.list(
        "pieces",
        job.pieces,
        wanted -> {
          json.words("material", wanted.material());
          json.wordsIfAny("mark", wanted.need().mark());
          json.length("length", wanted.need().length(), style);
          json.number("qty", wanted.need().qty());
          copies(wanted.need().firstCopy(), wanted.need().lastCopy(), job.times);
          json.wordsIfAny("for", wanted.need().purpose());
          SavedRules.write(json, wanted.need().rules());
        });
    if (!job.runs.isEmpty()) {
      json.list("runs", job.runs, run -> SavedRun.write(json, run, job.times, style));
    }
    if (!job.items.isEmpty()) {
      json.list(
          "items",
          job.items,
          wanted -> {
            json.words("item", wanted.item());
            json.number("qty", wanted.need().qty());
            copies(wanted.need().firstCopy(), wanted.need().lastCopy(), job.times);
          });
    }
  }

  /** Told where it is not for all copies of the job. */
  private void copies(int first, int last, int times) {
    if (first != 1 || last != times) {
      json.number("fromCopy", first);
      json.number("toCopy", last);
    }
  }
}

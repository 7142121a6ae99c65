package lapwright.files.saved;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import lapwright.measure.DecimalText;
import lapwright.measure.Length;
import lapwright.measure.Price;
import lapwright.measure.Reading;
import lapwright.measure.WeightRate;
import lapwright.plan.Account;
import lapwright.plan.Certificate;
import lapwright.plan.Cut;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Pattern;
import lapwright.plan.Purchase;
import lapwright.plan.RunLine;
import lapwright.shop.Material;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.RunNeed;
import lapwright.shop.Saw;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/** Reads one material of a saved plan. */
final class MaterialReader {
  private final Map<String, List<Need>> needs;
  private final Map<String, List<RunNeed>> runs;
  private final Map<String, List<RunLine>> lines;

  /**
   * @param needs pieces that the jobs need, by material
   * @param runs runs likewise
   * @param lines how they are laid
   */
  MaterialReader(
      Map<String, List<Need>> needs,
      Map<String, List<RunNeed>> runs,
      Map<String, List<RunLine>> lines) {
    this.needs = needs;
    this.runs = runs;
    this.lines = lines;
  }

  MaterialPlan read(PlanFields fields) {
    MaterialOrder order = order(fields);
    List<Purchase> purchases =
        fields.list(
            "buy",
            line ->
                PlanReader.guarded(
                    line, "packs", () -> new Purchase(line.words("supply"), line.count("packs"))));
    List<Pattern> patterns = fields.list("patterns", MaterialReader::pattern);
    Certificate certificate = CertificateNodes.read(fields, "certificate");
    Account account = account(fields.object("account"));
    return PlanReader.guarded(
        fields,
        "cost",
        () ->
            new MaterialPlan(
                order,
                purchases,
                patterns,
                amount(fields, "cost", order),
                amount(fields, "cash", order),
                amount(fields, "lowerBound", order),
                fields.word("proof", Words.PROOF),
                certificate,
                account,
                lines.getOrDefault(order.material().id(), List.of())));
  }

  private static long amount(PlanFields fields, String field, MaterialOrder order) {
    return order.isPriced()
        ? fields.money(field).tenThousandths()
        : fields.mm(field + "Mm").units();
  }

  private MaterialOrder order(PlanFields fields) {
    String id = fields.words("material");
    PlanFields sawFields = fields.object("saw");
    List<Supply> supplies = fields.list("supplies", MaterialReader::supply);
    return PlanReader.guarded(
        fields,
        "material",
        () -> {
          Saw saw =
              new Saw(
                  sawFields.words("saw"),
                  sawFields.mm("kerfMm"),
                  sawFields.mm("endTrimMm"),
                  sawFields.mm("holdMm"),
                  sawFields.mmIfAny("longestStickMm"),
                  orZero(sawFields.mmIfAny("shortestCutMm")),
                  sawFields.has("stack") ? sawFields.count("stack") : 1);
          Material material =
              new Material(
                  id,
                  fields.words("name"),
                  saw.id(),
                  fields.word("millEnds", Map.of("good", true, "bad", false)),
                  fields.mm("shortByMm"),
                  fields.mm("keepOffcutsFromMm"),
                  weight(fields),
                  fields.word("oneLotPer", Words.ONE_LOT_PER),
                  fields.mmIfAny("depthMm"),
                  fields.has("oneWay") && fields.truth("oneWay"));
          return new MaterialOrder(
              material,
              saw,
              fields.truth("onHandValued"),
              supplies,
              needs.getOrDefault(id, List.of()),
              runs.getOrDefault(id, List.of()),
              fields.words("objective").equals("drawn"));
        });
  }

  private static Length orZero(@Nullable Length length) {
    return length == null ? Length.ZERO : length;
  }

  private static @Nullable WeightRate weight(PlanFields fields) {
    if (!fields.has("weight")) {
      return null;
    }
    String text = fields.words("weight");
    if (DecimalText.weight(text) instanceof Reading.Value<WeightRate> weight) {
      return weight.value();
    }
    throw fields.damaged("weight", text, "not a weight per length");
  }

  private static Supply supply(PlanFields fields) {
    Supply supply =
        PlanReader.guarded(
            fields,
            "supply",
            () -> {
              Length length = fields.mm("lengthMm");
              return switch (fields.words("source")) {
                case "buy" -> offer(fields, length);
                case "bought" ->
                    new Supply.Bought(fields.wordsIfAny("supplier"), length, fields.count("qty"));
                case "on-hand" ->
                    new Supply.OnHand(
                        length,
                        fields.count("qty"),
                        fields.wordsIfAny("place"),
                        fields.wordsIfAny("lot"));
                case "rack" ->
                    new Supply.RackOffcut(
                        fields.words("rackId"),
                        length,
                        fields.word("ends", Words.ENDS),
                        fields.wordsIfAny("place"),
                        fields.wordsIfAny("lot"));
                default ->
                    throw fields.damaged("source", fields.words("source"), "an unknown origin");
              };
            });
    if (!supply.key().equals(fields.words("supply"))) {
      throw fields.damaged("supply", fields.words("supply"), "should be " + supply.key());
    }
    return supply;
  }

  private static Supply offer(PlanFields fields, Length length) {
    Price price =
        fields.has("price")
            ? new Price(fields.decimal("price"), fields.word("per", Words.PER))
            : null;
    return new Supply.Offer(
        fields.wordsIfAny("supplier"),
        length,
        price,
        fields.count("soldIn"),
        fields.has("atMost") ? fields.count("atMost") : Integer.MAX_VALUE,
        fields.wordsIfAny("code"),
        fields.day("quoted"),
        fields.day("goodUntil"));
  }

  private static Pattern pattern(PlanFields fields) {
    List<Cut> cuts =
        fields.list(
            "cuts",
            cut ->
                PlanReader.guarded(
                    cut,
                    "qty",
                    () ->
                        new Cut(
                            cut.words("job"),
                            cut.count("copy"),
                            cut.wordsIfAny("mark"),
                            cut.mm("lengthMm"),
                            cut.count("qty"),
                            SavedRules.read(cut),
                            orZero(cut.mmIfAny("shorterMm")))));
    List<String> names = new ArrayList<>();
    List<Length> offcuts =
        fields.list(
            "offcuts",
            offcut -> {
              names.addAll(offcut.wordList("names"));
              return offcut.mm("lengthMm");
            });
    if (offcuts.size() > 1) {
      throw fields.damaged("offcuts", "", "more than one offcut a stick");
    }
    return PlanReader.guarded(
        fields,
        "ticket",
        () ->
            new Pattern(
                fields.words("ticket"),
                fields.words("supply"),
                fields.count("times"),
                cuts,
                offcuts.isEmpty() ? Length.ZERO : offcuts.get(0),
                names));
  }

  private static Account account(PlanFields fields) {
    return new Account(
        fields.mm("drawn"),
        fields.mm("finished"),
        fields.mm("laps"),
        fields.mm("kerf"),
        fields.mm("endTrim"),
        fields.mm("offcutsKept"),
        fields.mm("scrap"),
        fields.mm("surplus"),
        fields.mm("shortAllowance"));
  }
}

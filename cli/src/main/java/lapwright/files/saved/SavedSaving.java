package lapwright.files.saved;

import java.util.List;
import java.util.Objects;
import lapwright.compare.ItemSaving;
import lapwright.compare.MaterialSaving;
import lapwright.compare.Saving;
import lapwright.measure.Length;
import lapwright.measure.Money;
import org.jspecify.annotations.Nullable;

/** What combining saved when the first order was placed, as a plan keeps it. */
final class SavedSaving {
  private final Json json;

  private SavedSaving(Json json) {
    this.json = json;
  }

  static void write(Json json, Saving saving) {
    SavedSaving writer = new SavedSaving(json);
    if (saving.hasMoney()) {
      json.money("cost", saving.cost());
      json.money("cash", saving.cash());
    }
    if (!saving.materials().stream().allMatch(MaterialSaving::priced)) {
      json.mm("stockMm", saving.length());
    }
    json.truth("proved", saving.proved());
    json.list("materials", saving.materials(), writer::material);
    json.list("items", saving.items(), writer::item);
  }

  private void material(MaterialSaving saving) {
    json.words("material", saving.material());
    json.wordList("jobs", saving.jobs());
    amount("together", saving.together(), saving.priced());
    amount("togetherCash", saving.togetherCash(), saving.priced());
    json.truth("togetherProved", saving.togetherProved());
    MaterialSaving.JobByJob jobByJob = saving.jobByJob();
    if (jobByJob == null) {
      json.words("noPlanFor", Objects.requireNonNull(saving.firstWithoutPlan()));
      return;
    }
    amount("jobByJob", jobByJob.cost(), saving.priced());
    amount("jobByJobCash", jobByJob.cash(), saving.priced());
    json.truth("jobByJobProved", jobByJob.proved());
    amount("saved", saving.saved(), saving.priced());
    amount("cashSaved", saving.cashSaved(), saving.priced());
    json.truth("proved", saving.togetherProved() && jobByJob.proved());
  }

  private void amount(String field, long value, boolean priced) {
    if (priced) {
      json.money(field, new Money(value));
    } else {
      json.mm(field + "Mm", Length.ofUnits(value));
    }
  }

  private void item(ItemSaving saving) {
    json.words("item", saving.item());
    json.wordList("jobs", saving.jobs());
    if (saving.priced()) {
      json.money("together", new Money(saving.together()));
      json.money("jobByJob", new Money(saving.jobByJob()));
      json.money("saved", new Money(saving.saved()));
    } else {
      json.number("togetherPieces", saving.together());
      json.number("jobByJobPieces", saving.jobByJob());
    }
  }

  /** Reads it back; null where it was not asked, or an older program did not keep all of it. */
  static @Nullable Saving read(PlanFields plan) {
    if (!plan.has("saved")) {
      return null;
    }
    PlanFields saved = plan.object("saved");
    List<PlanFields> materials = saved.list("materials", one -> one);
    if (materials.stream().anyMatch(one -> !one.has("togetherProved"))) {
      return null;
    }
    return new Saving(
        materials.stream().map(SavedSaving::material).toList(),
        saved.has("items") ? saved.list("items", SavedSaving::item) : List.of());
  }

  private static MaterialSaving material(PlanFields fields) {
    boolean priced = fields.has("together");
    return PlanReader.guarded(
        fields,
        "material",
        () ->
            new MaterialSaving(
                fields.words("material"),
                priced,
                fields.wordList("jobs"),
                amount(fields, "together", priced),
                amount(fields, "togetherCash", priced),
                fields.truth("togetherProved"),
                fields.has("noPlanFor")
                    ? null
                    : new MaterialSaving.JobByJob(
                        amount(fields, "jobByJob", priced),
                        amount(fields, "jobByJobCash", priced),
                        fields.truth("jobByJobProved")),
                fields.has("noPlanFor") ? fields.words("noPlanFor") : null));
  }

  private static long amount(PlanFields fields, String field, boolean priced) {
    return priced ? fields.money(field).tenThousandths() : fields.mm(field + "Mm").units();
  }

  private static ItemSaving item(PlanFields fields) {
    boolean priced = fields.has("together");
    return PlanReader.guarded(
        fields,
        "item",
        () ->
            new ItemSaving(
                fields.words("item"),
                priced,
                fields.wordList("jobs"),
                priced
                    ? fields.money("together").tenThousandths()
                    : fields.number("togetherPieces"),
                priced
                    ? fields.money("jobByJob").tenThousandths()
                    : fields.number("jobByJobPieces")));
  }
}

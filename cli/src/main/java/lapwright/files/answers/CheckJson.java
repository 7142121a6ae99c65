package lapwright.files.answers;

import java.util.List;
import lapwright.check.CheckedPlan;
import lapwright.check.MaterialBound;
import lapwright.check.PlanFault;
import lapwright.compare.Change;
import lapwright.files.OrderInput;
import lapwright.files.saved.Json;
import lapwright.files.source.Note;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.plan.ItemPlan;
import lapwright.plan.MaterialPlan;

/** What {@code check} found of a folder and of the plan that is saved in it. */
public final class CheckJson {
  private final Json json = new Json();

  private CheckJson() {}

  /** The plan keeps every rule. {@code fits} tells whether it still fits the jobs and the stock. */
  public static String sound(OrderInput input, List<CheckedPlan> plans, List<Change> changes) {
    CheckJson check = new CheckJson();
    return check.json.text(
        () -> {
          check.input(input);
          check.json.words("plan", "sound");
          check.json.truth(
              "fits", changes.stream().noneMatch(change -> change.kind().spoilsPlan()));
          check.json.list("changes", changes, check::change);
          check.json.list("orders", plans, check::order);
        });
  }

  /** No plan is saved. */
  public static String none(OrderInput input) {
    CheckJson check = new CheckJson();
    return check.json.text(
        () -> {
          check.input(input);
          check.json.words("plan", "none");
        });
  }

  /** The plan must not be used. */
  public static String broken(OrderInput input, List<PlanFault> faults) {
    CheckJson check = new CheckJson();
    return check.json.text(
        () -> {
          check.input(input);
          check.json.words("plan", "broken");
          check.json.list(
              "faults",
              faults,
              fault -> {
                check.json.wordsIfAny("material", fault.material());
                check.json.wordsIfAny("ticket", fault.ticket());
                check.json.words("fault", fault.message());
              });
        });
  }

  private void input(OrderInput input) {
    json.words("input", "sound");
    json.list(
        "notes",
        input.notes(),
        (Note note) -> {
          json.words("place", note.place().print());
          json.wordsIfAny("field", note.field());
          json.words("note", note.text());
        });
  }

  private void change(Change change) {
    json.words("kind", change.kind().name().toLowerCase(java.util.Locale.ROOT));
    json.truth("spoilsPlan", change.kind().spoilsPlan());
    json.words("material", change.material());
    json.words("what", change.what());
    json.words("planned", change.planned());
    json.words("now", change.now());
  }

  private void order(CheckedPlan checked) {
    List<MaterialPlan> materials = checked.plan().materials();
    json.list(
        "materials",
        checked.bounds(),
        (MaterialBound bound) -> {
          MaterialPlan plan = materials.get(checked.bounds().indexOf(bound));
          json.words("material", plan.material());
          json.words("proof", plan.proof().word());
          amount("cost", plan, plan.cost());
          amount("recomputedBound", plan, bound.bound());
        });
    json.list(
        "items",
        checked.plan().items(),
        (ItemPlan item) -> {
          json.words("item", item.item());
          if (item.isPriced()) {
            json.money("cost", new Money(item.cost()));
          }
          json.number("missing", item.missing());
        });
  }

  private void amount(String field, MaterialPlan plan, long amount) {
    if (plan.order().isPriced()) {
      json.money(field, new Money(amount));
    } else {
      json.mm(field + "Mm", Length.ofUnits(amount));
    }
  }
}

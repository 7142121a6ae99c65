package lapwright.print;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapwright.check.CheckedPlan;
import lapwright.check.LeafBound;
import lapwright.check.MaterialBound;
import lapwright.check.NoPlanLeaf;
import lapwright.check.PlanFault;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.measure.MoneyStyle;
import lapwright.plan.MaterialPlan;
import lapwright.print.Table.Kind;

/** What the check of a plan found, as text. */
public final class CheckText {
  private final CheckedPlan checked;
  private final MoneyStyle money;
  private final Page page;
  private final Shortening shortening;

  private CheckText(CheckedPlan checked, Style style, Shortening shortening) {
    this.checked = checked;
    this.shortening = shortening;
    money = new MoneyStyle(checked.plan().shop().currency());
    page = new Page(style);
  }

  /**
   * A sound plan with its recomputed bounds; with everything shown, each bound's weakest leaf line
   * by line, to be followed by hand.
   */
  public static String render(CheckedPlan checked, Style style) {
    return Shortening.fitting(style, limit -> new CheckText(checked, style, limit).write());
  }

  /** A broken plan: all its faults, however many. */
  public static String render(List<PlanFault> faults, Style style) {
    Page page = new Page(style);
    page.strongText(
        "The plan is broken and must not be used: "
            + Phrases.count(faults.size(), "fault", "faults")
            + ".");
    faults.forEach(fault -> page.text(fault.message(), 2, 4));
    return page.printed();
  }

  private Page write() {
    List<MaterialPlan> plans = checked.plan().materials();
    int tickets = plans.stream().mapToInt(plan -> plan.patterns().size()).sum();
    page.strongText(
        "The plan is sound: "
            + Phrases.count(tickets, "ticket", "tickets")
            + " for "
            + Phrases.count(plans.size(), "material", "materials")
            + " keep every rule, and each bound was recomputed from the shop's data.");
    page.blank();
    Table table =
        new Table(page)
            .column("Material", Kind.NAME)
            .column("Cost", Kind.NUMBER)
            .column("No plan under", Kind.NUMBER)
            .column("Leaves", Kind.NUMBER)
            .column("Plan", Kind.NAME);
    int shown = Shortening.shown(plans.size(), shortening.main());
    for (int i = 0; i < shown; i++) {
      MaterialPlan plan = plans.get(i);
      MaterialBound bound = checked.bounds().get(i);
      table.row(
          List.of(
              shortening.material(plan.material(), plan.order().material().name()),
              cost(plan, plan.cost()),
              cost(plan, bound.bound()),
              MoneyStyle.grouped(bound.leaves()),
              plan.proof().word()));
    }
    if (shown < plans.size()) {
      table.note(
          "and "
              + Phrases.count(plans.size() - shown, "more material", "more materials")
              + ": --all");
    }
    table.print(2);
    if (page.style().all()) {
      for (int i = 0; i < plans.size(); i++) {
        leaf(plans.get(i), checked.bounds().get(i));
      }
    } else if (!plans.isEmpty()) {
      page.text("How each bound is reached, line by line: --all.", 2, 2);
    }
    page.explainSigns();
    return page;
  }

  private String cost(MaterialPlan plan, long cost) {
    return plan.order().isPriced()
        ? money.print(new Money(cost))
        : page.length(Length.ofUnits(cost));
  }

  /** Costs here are whole numbers of 1/10,000 of the currency, or of 1/16,000 mm. */
  private void leaf(MaterialPlan plan, MaterialBound bound) {
    LeafBound leaf = bound.weakest();
    page.heading("Bound of " + plan.order().material().name());
    bound.refuted().forEach(this::refuted);
    decisions(leaf.decisions())
        .ifPresent(decided -> page.text("The leaf with the least bound: " + decided + ".", 2, 2));
    page.text(
        "Every piece is given a weight; "
            + number(leaf.scale())
            + " of weight stands for "
            + (plan.order().isPriced() ? "1/10,000 of the currency" : "1/16,000 mm of stock")
            + ". No stick can carry more than its greatest weight, so no plan costs less than the"
            + " pieces weigh.",
        2,
        2);
    Table pieces =
        new Table(page)
            .column("Piece", Kind.NUMBER)
            .column("How many", Kind.NUMBER)
            .column("Weight of one", Kind.NUMBER);
    leaf.pieces()
        .forEach(
            piece ->
                pieces.row(
                    List.of(
                        page.style().units().exact(piece.length()),
                        number(piece.quantity()),
                        number(piece.weight()))));
    pieces.print(2);
    Table stock =
        new Table(page)
            .column("Stock", Kind.NAME)
            .column("Pack costs", Kind.NUMBER)
            .column("Sticks", Kind.NUMBER)
            .column("Greatest weight", Kind.NUMBER)
            .column("Term", Kind.NUMBER);
    leaf.stock()
        .forEach(
            line ->
                stock.row(
                    List.of(
                        String.join(", ", line.supplies()),
                        number(line.packCost()),
                        number(line.packSize()),
                        number(line.heaviest()),
                        number(line.term()))));
    page.blank();
    stock.print(2);
    page.text(
        "Pieces weigh "
            + number(leaf.weightSum())
            + ", with the terms "
            + number(leaf.total())
            + "; divided by "
            + number(leaf.scale())
            + " and rounded up: "
            + number(leaf.bound())
            + ". Raised to the next cost that can be reached: "
            + number(bound.bound())
            + ".",
        2,
        2);
  }

  /** A leaf in which no plan exists, whatever it costs. */
  private void refuted(NoPlanLeaf leaf) {
    String how =
        leaf.steps() == 0
            ? "they are too short together."
            : leaf.listed() == 0
                ? "what each of them can waste at most leaves too little by the weights given"
                    + (leaf.steps() == 1
                        ? "."
                        : ", in " + Phrases.count(leaf.steps(), "step", "steps") + ".")
                : "of "
                    + Phrases.count(leaf.listed(), "pattern", "patterns")
                    + " that waste little enough, no choice gives all pieces; shown in "
                    + Phrases.count(leaf.steps(), "step", "steps")
                    + ", each worked out pattern by pattern.";
    page.text(
        decisions(leaf.decisions()).map(decided -> "With " + decided + ", n").orElse("N")
            + "o plan exists: "
            + Phrases.count(leaf.sticks(), "stick does", "sticks do")
            + " not suffice, for "
            + how,
        2,
        2);
  }

  private static Optional<String> decisions(List<LeafBound.Decision> decisions) {
    List<String> words = new ArrayList<>();
    for (LeafBound.Decision decision : decisions) {
      String packs =
          decision.mostPacks() == Long.MAX_VALUE
              ? "at least " + decision.leastPacks()
              : decision.leastPacks() == 0
                  ? "at most " + decision.mostPacks()
                  : decision.leastPacks() == decision.mostPacks()
                      ? "exactly " + decision.mostPacks()
                      : decision.leastPacks() + " to " + decision.mostPacks();
      words.add(packs + " of " + String.join(", ", decision.supplies()));
    }
    return words.isEmpty() ? Optional.empty() : Optional.of(String.join(" and ", words));
  }

  private static String number(long number) {
    return MoneyStyle.grouped(number);
  }

  private static String number(BigInteger number) {
    StringBuilder text = new StringBuilder(number.toString());
    int first = number.signum() < 0 ? 1 : 0;
    for (int i = text.length() - 3; i > first; i -= 3) {
      text.insert(i, ',');
    }
    return text.toString();
  }
}

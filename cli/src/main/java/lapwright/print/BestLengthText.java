package lapwright.print;

import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.compare.BestLength;
import lapwright.compare.BestLength.RuledOut;
import lapwright.compare.BestLength.Tried;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.measure.MoneyStyle;
import lapwright.measure.Percent;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Proof;
import lapwright.print.Table.Kind;
import lapwright.shop.Shop;

/** Which ordered length would buy the least, as text. */
public final class BestLengthText {
  private static final int ROWS_EACH_SIDE = 4;

  private final Page page;
  private final MoneyStyle money;

  private BestLengthText(Shop shop, Style style) {
    page = new Page(style);
    money = new MoneyStyle(shop.currency());
  }

  public static String render(List<BestLength.Answer> answers, Shop shop, Style style) {
    BestLengthText text = new BestLengthText(shop, style);
    if (answers.isEmpty()) {
      text.page.strongText("No length is asked about: the jobs have no pieces.");
    }
    answers.forEach(text::material);
    if (!answers.isEmpty()) {
      text.page.blank();
      text.page.text(
          "Bought singly in just these lengths, at the price by length that is lowest now; rack and"
              + " sticks on hand are left aside, also in what it costs now. No line of a run has"
              + " more joints than the lengths on offer ask for."
              + (answers.stream().allMatch(BestLength.Answer::isBest)
                  ? ""
                  : " Not every length was tried to its end, so another may be better."),
          0,
          0);
    }
    text.page.explainSigns();
    return text.page.printed();
  }

  private void material(BestLength.Answer answer) {
    page.blank();
    String name = answer.order().material().name();
    if (answer.tried().isEmpty()) {
      page.strongText(name + ": no length between these gives every piece, or the time was over.");
      return;
    }
    Tried best = BestLength.best(answer.tried());
    page.strongText(
        name
            + ": "
            + page.length(best.length())
            + " would buy the least, "
            + amount(answer, best.cost())
            + " for "
            + Phrases.sticks(best.sticks())
            + against(answer, best)
            + (best.proved() ? "" : " Not proved for that length."));
    table(answer, best);
    two(answer, best);
  }

  /** What a second length would save. */
  private void two(BestLength.Answer answer, Tried best) {
    BestLength.Two two = answer.two();
    if (two == null) {
      page.text(
          "No second length that was tried beside it would save half a percent"
              + pairs(answer)
              + ".",
          0,
          2);
      return;
    }
    long less = best.cost() - two.cost();
    page.text(
        "The best two found, "
            + page.length(two.shorter())
            + " and "
            + page.length(two.longer())
            + ", would take "
            + amount(answer, two.cost())
            + " for "
            + Phrases.sticks(two.sticks())
            + ": "
            + amount(answer, less)
            + " ("
            + Percent.of(less, best.cost()).print()
            + ") less than the best one"
            + pairs(answer)
            + "."
            + (two.proved() ? "" : " Not proved for these two."),
        0,
        2);
  }

  private static String pairs(BestLength.Answer answer) {
    return answer.pairs() == 0
        ? ""
        : " ("
            + Phrases.count(answer.pairs(), "pair", "pairs")
            + " tried, "
            + MoneyStyle.grouped(answer.pairsRuledOut())
            + " of them ruled out)";
  }

  private String against(BestLength.Answer answer, Tried best) {
    MaterialPlan now = answer.now();
    if (now == null) {
      return ".";
    }
    long less = now.cost() - best.cost();
    String than =
        " than the "
            + amount(answer, now.cost())
            + " of now"
            + (now.proof() == Proof.PROVED ? "." : ", which is not proved.");
    return less == 0
        ? ", as much as now."
        : ": "
            + amount(answer, Math.abs(less))
            + " ("
            + Percent.of(Math.abs(less), now.cost()).print()
            + ")"
            + (less > 0 ? " less" : " more")
            + than;
  }

  /** The best length, and the lengths around it. */
  private void table(BestLength.Answer answer, Tried best) {
    Table table =
        new Table(page)
            .column("Length", Kind.NUMBER)
            .column("Sticks", Kind.NUMBER)
            .column("Cost", Kind.NUMBER)
            .column("More than the best", Kind.NUMBER)
            .column("Plan", Kind.NAME);
    SortedMap<Length, List<String>> rows = new TreeMap<>();
    for (Tried tried : answer.tried()) {
      rows.put(
          tried.length(),
          List.of(
              page.length(tried.length()),
              MoneyStyle.grouped(tried.sticks()),
              amount(answer, tried.cost()),
              tried.cost() == best.cost() ? "" : amount(answer, tried.cost() - best.cost()),
              tried.proved() ? Proof.PROVED.word() : Proof.OPEN.word()));
    }
    for (RuledOut out : answer.ruledOut()) {
      rows.put(
          out.length(),
          List.of(
              page.length(out.length()),
              "",
              amount(answer, out.atLeast()),
              out.atLeast() == best.cost() ? "0" : amount(answer, out.atLeast() - best.cost()),
              "or more"));
    }
    List<Length> lengths = List.copyOf(rows.keySet());
    int at = lengths.indexOf(best.length());
    int from = Math.max(0, at - ROWS_EACH_SIDE);
    int to = Math.min(lengths.size(), at + ROWS_EACH_SIDE + 1);
    List.copyOf(rows.values()).subList(from, to).forEach(table::row);
    table.note(tried(answer));
    table.print(2);
  }

  private static String tried(BestLength.Answer answer) {
    int out = answer.ruledOut().size();
    int planned = answer.tried().size();
    return Phrases.count(planned + out, "length", "lengths")
        + " tried"
        + (out == 0
            ? ""
            : ": "
                + MoneyStyle.grouped(planned)
                + " planned, "
                + MoneyStyle.grouped(out)
                + " ruled out, costing too much whatever the plan")
        + (answer.isBest() ? "; no other in these steps saves 0.1 % more" : "");
  }

  private String amount(BestLength.Answer answer, long cost) {
    return answer.order().isPriced()
        ? money.print(new Money(cost))
        : page.length(Length.ofUnits(cost));
  }
}

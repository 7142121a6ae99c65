package lapwright.files.answers;

import java.util.List;
import lapwright.compare.BestLength;
import lapwright.files.saved.Json;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.measure.Money;
import lapwright.plan.MaterialPlan;

/** Which ordered length would buy the least. */
public final class BestLengthJson {
  private BestLengthJson() {}

  public static String text(List<BestLength.Answer> answers, LengthStyle units) {
    Json json = new Json();
    return json.text(
        () -> json.list("materials", answers, answer -> material(json, answer, units)));
  }

  private static void material(Json json, BestLength.Answer answer, LengthStyle units) {
    boolean priced = answer.order().isPriced();
    json.words("material", answer.order().material().id());
    MaterialPlan now = answer.now();
    if (now != null) {
      amount(json, "now", now.cost(), priced);
      json.words("nowProof", now.proof().word());
    }
    if (!answer.tried().isEmpty()) {
      json.length("best", BestLength.best(answer.tried()).length(), units);
    }
    BestLength.Two two = answer.two();
    if (two != null) {
      json.object(
          "bestTwo",
          () -> {
            json.length("shorter", two.shorter(), units);
            json.length("longer", two.longer(), units);
            json.number("sticks", two.sticks());
            amount(json, "cost", two.cost(), priced);
            json.truth("proved", two.proved());
          });
    }
    json.list(
        "tried",
        answer.tried(),
        tried -> {
          json.length("length", tried.length(), units);
          json.number("sticks", tried.sticks());
          amount(json, "cost", tried.cost(), priced);
          json.truth("proved", tried.proved());
        });
    json.list(
        "ruledOut",
        answer.ruledOut(),
        out -> {
          json.length("length", out.length(), units);
          amount(json, "atLeast", out.atLeast(), priced);
        });
    json.truth("noOtherCostsLess", answer.isBest());
    json.number("pairsTried", answer.pairs());
    json.number("pairsRuledOut", answer.pairsRuledOut());
  }

  private static void amount(Json json, String field, long cost, boolean priced) {
    if (priced) {
      json.money(field, new Money(cost));
    } else {
      json.mm(field + "Mm", Length.ofUnits(cost));
    }
  }
}

package lapwright.files.answers;

import lapwright.compare.OneMore;
import lapwright.files.saved.Json;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.measure.Money;
import lapwright.paperwork.MarkPaper;
import lapwright.plan.Cut;

/** Where the pieces of one mark land. */
public final class MarkJson {
  private MarkJson() {}

  public static String text(MarkPaper paper, LengthStyle units) {
    Json json = new Json();
    return json.text(
        () -> {
          json.words("mark", paper.mark());
          json.wordsIfAny("currency", paper.shop().currency());
          json.list("kinds", paper.kinds(), kind -> kind(json, kind, units));
        });
  }

  private static void kind(Json json, MarkPaper.Kind kind, LengthStyle units) {
    json.words("job", kind.job());
    json.words("material", kind.material());
    json.words("kind", kind.isRun() ? "run" : "piece");
    json.length("length", kind.length(), units);
    json.number("qty", kind.count());
    json.wordsIfAny("for", kind.purpose());
    json.list(
        "tickets",
        kind.landings(),
        landing -> {
          json.words("ticket", landing.ticket());
          json.length("stock", landing.supply().length(), units);
          json.words("supply", landing.supply().key());
          json.number("times", landing.sticks());
          json.number("qty", landing.each());
          json.list("beside", landing.neighbours(), cut -> cut(json, cut, units));
          json.mm("offcutMm", landing.offcut());
          json.truth("kept", landing.kept());
        });
    json.object("oneMore", () -> oneMore(json, kind.oneMore()));
  }

  private static void cut(Json json, Cut cut, LengthStyle units) {
    json.words("job", cut.job());
    json.wordsIfAny("mark", cut.mark());
    json.length("length", cut.length(), units);
    json.number("qty", cut.qty());
  }

  private static void oneMore(Json json, OneMore.Answer answer) {
    amount(json, "without", answer, answer.cost());
    json.words("withoutProof", answer.proof().word());
    OneMore.With with = answer.with();
    if (with != null) {
      amount(json, "with", answer, with.cost());
      json.words("withProof", with.proof().word());
      amount(json, "costs", answer, answer.difference());
    }
  }

  private static void amount(Json json, String field, OneMore.Answer answer, long cost) {
    if (answer.priced()) {
      json.money(field, new Money(cost));
    } else {
      json.mm(field + "Mm", Length.ofUnits(cost));
    }
  }
}

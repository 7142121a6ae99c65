package lapwright.files.saved;

import java.util.List;
import java.util.Map;
import lapwright.check.CheckedPlan;
import lapwright.compare.BesideWeek;
import lapwright.compare.OtherLengthResult;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.measure.Money;
import lapwright.paperwork.BesideWeekPaper;
import lapwright.paperwork.DimensionPaper;

/** Answers to an estimator's questions as JSON, each with the plans that it rests on. */
public final class EstimateJson {
  private EstimateJson() {}

  /** One length: {@code now} and {@code then}; several: a list of such pairs, in their order. */
  public static String otherLengths(List<OtherLengthResult> results, Map<String, String> inputs) {
    if (results.size() == 1) {
      OtherLengthResult one = results.get(0);
      return "{"
          + plan("now", one.now(), inputs)
          + ",\n"
          + plan("then", one.then(), inputs)
          + "}\n";
    }
    StringBuilder text = new StringBuilder("{\"lengths\": [");
    String between = "";
    for (OtherLengthResult one : results) {
      text.append(between)
          .append("{\"stockLengthMm\": ")
          .append(mm(one.stockLength()))
          .append(",\n")
          .append(plan("now", one.now(), inputs))
          .append(",\n")
          .append(plan("then", one.then(), inputs))
          .append("}");
      between = ",\n";
    }
    return text.append("]}\n").toString();
  }

  /** The bid's figures, and the three plans. */
  public static String besideWeek(
      BesideWeekPaper paper, BesideWeek plans, Map<String, String> inputs) {
    String figures =
        new Json()
            .text(
                json -> {
                  json.wordList("bids", paper.bids());
                  json.wordList("withStock", paper.withStock());
                  json.truth("proved", paper.isProved());
                  if (paper.together().priced()) {
                    json.money("aloneCost", paper.alone().cost());
                    json.money("adds", paper.adds());
                  }
                  json.mm("aloneBoughtMm", paper.alone().bought());
                  json.mm("addsBoughtMm", paper.together().bought().minus(paper.week().bought()));
                  json.mm("finishedMm", paper.alone().account().finished());
                });
    return joined(
        figures,
        plan("alone", plans.alone(), inputs),
        plan("week", plans.week(), inputs),
        plan("together", plans.together(), inputs));
  }

  /** The marks that would save something, and the plan with the marks as they are. */
  public static String dimensions(
      DimensionPaper paper, CheckedPlan plan, Map<String, String> inputs) {
    String figures =
        new Json()
            .text(
                json -> {
                  json.mm("mostMm", paper.most());
                  json.number("asked", paper.asked());
                  json.wordList("notAsked", paper.notAsked());
                  json.list(
                      "dimensions",
                      paper.rows(),
                      row -> {
                        json.words("material", row.material());
                        json.words("job", row.need().job());
                        json.words("mark", row.need().mark());
                        json.mm("lengthMm", row.need().length());
                        json.mm("shorterMm", row.shorter());
                        if (row.priced()) {
                          json.money("saves", new Money(row.saves()));
                        } else {
                          json.mm("savesMm", Length.ofUnits(row.saves()));
                        }
                        json.number("sticksFewer", row.sticksFewer());
                        json.words("proof", row.proof().word());
                      });
                });
    return joined(figures, plan("plan", plan, inputs));
  }

  private static String joined(String figures, String... plans) {
    String object = figures.strip();
    return object.substring(0, object.length() - 1).strip()
        + ",\n"
        + String.join(",\n", plans)
        + "}\n";
  }

  private static String plan(String field, CheckedPlan plan, Map<String, String> inputs) {
    return "\"" + field + "\": " + PlanFile.text(plan.plan(), inputs, null).strip();
  }

  private static String mm(Length length) {
    return LengthStyle.exactMm(length).toPlainString();
  }
}

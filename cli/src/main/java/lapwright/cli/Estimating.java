package lapwright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.check.CheckedPlan;
import lapwright.compare.BesideWeek;
import lapwright.compare.BestLength;
import lapwright.compare.OtherLength;
import lapwright.compare.OtherLengthResult;
import lapwright.compare.ShorterMark;
import lapwright.compare.Unanswered;
import lapwright.effort.Effort;
import lapwright.effort.SideBySide;
import lapwright.files.OrderInput;
import lapwright.files.answers.BestLengthJson;
import lapwright.files.saved.EstimateJson;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.paperwork.BesideWeekPaper;
import lapwright.paperwork.DimensionPaper;
import lapwright.paperwork.OtherLengthPaper;
import lapwright.paperwork.OtherLengthsPaper;
import lapwright.plan.MaterialPlan;
import lapwright.print.BesideWeekText;
import lapwright.print.BestLengthText;
import lapwright.print.DimensionText;
import lapwright.print.OtherLengthText;
import lapwright.print.OtherLengthsText;
import lapwright.print.Style;
import lapwright.shop.Job;
import lapwright.shop.JobStatus;
import lapwright.shop.MaterialOrder;

/** The estimator's questions that need plans of their own. */
final class Estimating {
  /** What a drawing's dimension may be asked to give: 1/2 in, or the whole millimetres in it. */
  private static final int SIXTEENTHS = 8;

  private static final int MILLIMETRES = 12;

  private final Desk desk;
  private final PlanningOptions planning;
  private final PaperOptions papers;
  private final OrderInput input;
  private final Style style;
  private final Unanswered unanswered = new Unanswered();

  Estimating(Desk desk, PlanningOptions planning, PaperOptions papers, OrderInput input) {
    this.desk = desk;
    this.planning = planning;
    this.papers = papers;
    this.input = input;
    this.style = papers.style(input.order().shop(), desk.surroundings());
  }

  /** What if stock came in this length only, or in that? */
  int inOtherLengths(List<MaterialOrder> orders, List<Length> lengths) {
    List<OtherLengthResult> results =
        desk.plan(
            input,
            orders,
            planning,
            (planner, effort) ->
                new OtherLength(planner)
                    .ask(input.order().shop(), orders, lengths, unanswered, effort));
    if (results == null) {
      return desk.tellNoPlan(new PlanResult.Interrupted(List.of()), style);
    }
    if (papers.isJson()) {
      desk.print(EstimateJson.otherLengths(results, input.digests()));
    } else if (results.size() == 1) {
      desk.print(OtherLengthText.render(OtherLengthPaper.of(results.get(0)), style));
    } else {
      desk.print(OtherLengthsText.render(OtherLengthsPaper.of(results), style));
    }
    desk.tell(unanswered);
    List<CheckedPlan> plans = new ArrayList<>();
    results.forEach(result -> plans.addAll(List.of(result.now(), result.then())));
    return desk.statusOf(plans, planning);
  }

  /** Which ordered length would buy the least? */
  int bestLength(List<MaterialOrder> orders, LengthRange range) {
    boolean feet = style.units() == LengthStyle.FEET_INCHES;
    Length step = feet ? Length.ofInches(1) : Length.ofMm(10);
    List<BestLength.Answer> answers =
        desk.plan(
            input,
            orders,
            planning,
            (planner, effort) ->
                new BestLength(planner, unanswered)
                    .ask(input.order().shop(), orders, range.from(), range.to(), step, effort));
    desk.print(
        papers.isJson()
            ? BestLengthJson.text(answers, style.units())
            : BestLengthText.render(answers, input.order().shop(), style));
    desk.tell(unanswered);
    return ExitStatus.DONE;
  }

  /** What do the jobs cost by themselves, and what do they add to the week? */
  int besideWeek(Set<String> bids) {
    List<MaterialOrder> orders =
        input.order().materialOrders(job -> bids.contains(job.name()) || isOfTheWeek(job));
    BesideWeek.Answer answer =
        desk.plan(
            input,
            orders,
            planning,
            (planner, effort) ->
                BesideWeek.of(
                    planner, input.order(), new TreeSet<>(bids), this::isOfTheWeek, effort));
    if (answer instanceof BesideWeek.Answer.NotPlanned not) {
      desk.tell("lapwright: " + String.join(", ", bids) + ": no plan " + not.which() + ".");
      return desk.tellNoPlan(not.why(), style);
    }
    BesideWeek plans = ((BesideWeek.Answer.Compared) answer).plans();
    BesideWeekPaper paper = BesideWeekPaper.of(plans);
    desk.print(
        papers.isJson()
            ? EstimateJson.besideWeek(paper, plans, input.digests())
            : BesideWeekText.render(paper, style));
    return desk.statusOf(List.of(plans.alone(), plans.week(), plans.together()), planning);
  }

  private boolean isOfTheWeek(Job job) {
    return job.status() == JobStatus.FIRM && input.wanted().contains(job.name());
  }

  private record Dimensions(PlanResult plan, List<ShorterMark> marks) {}

  /** Which marks would cost less if they were a little shorter? */
  int dimensions(List<MaterialOrder> orders) {
    boolean feet = style.units() == LengthStyle.FEET_INCHES;
    Length step = feet ? Length.ofSixteenths(1) : Length.ofMm(1);
    int steps = feet ? SIXTEENTHS : MILLIMETRES;
    Dimensions dimensions =
        desk.plan(
            input,
            orders,
            planning,
            (planner, effort) -> dimensions(planner, orders, step, steps, effort));
    if (!(dimensions.plan() instanceof PlanResult.Planned planned)) {
      return desk.tellNoPlan(dimensions.plan(), style);
    }
    List<String> notAsked = new ArrayList<>();
    int asked = 0;
    for (MaterialPlan material : planned.plan().plan().materials()) {
      if (ShorterMark.isAskedOf(material)) {
        asked += material.order().needs().size();
      } else {
        notAsked.add(material.material());
      }
    }
    DimensionPaper paper =
        DimensionPaper.of(
            input.order().shop(), step.times(steps), asked, notAsked, dimensions.marks());
    desk.print(
        papers.isJson()
            ? EstimateJson.dimensions(paper, planned.plan(), input.digests())
            : DimensionText.render(paper, style));
    desk.tell(unanswered);
    return desk.statusOf(planned.plan(), planning);
  }

  private Dimensions dimensions(
      Planner planner, List<MaterialOrder> orders, Length step, int steps, Effort effort) {
    PlanResult plan = planner.plan(input.order().shop(), orders, Map.of(), effort);
    List<ShorterMark> marks = new ArrayList<>();
    if (plan instanceof PlanResult.Planned planned) {
      SideBySide.map(
              desk.surroundings().threads(),
              planned.plan().plan().materials(),
              material ->
                  unanswered.ask(
                      "marks that could be shorter (" + material.material() + ")",
                      List.<ShorterMark>of(),
                      () ->
                          ShorterMark.of(
                              planner, input.order().shop(), material, step, steps, effort)))
          .forEach(marks::addAll);
    }
    return new Dimensions(plan, marks);
  }
}

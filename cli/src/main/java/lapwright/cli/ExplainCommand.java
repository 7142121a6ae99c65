package lapwright.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import lapwright.PlanResult;
import lapwright.check.CheckedPlan;
import lapwright.compare.OneMore;
import lapwright.files.JobChoice;
import lapwright.files.OrderInput;
import lapwright.files.answers.MarkJson;
import lapwright.files.source.Nearest;
import lapwright.paperwork.MarkPaper;
import lapwright.print.CheckText;
import lapwright.print.MarkText;
import lapwright.print.Style;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Where the pieces of one mark land, and what one more would cost. */
@Command(
    name = "explain",
    description = {
      "Where each piece of a mark lands: on which ticket, from which stick, beside what; and what one"
          + " more would cost, which is planned. Of plan.json in the folder where 'order --save' has"
          + " left one, else planned now.",
    },
    footerHeading = "%nExample:%n",
    footer = "  lapwright explain my-shop P1")
final class ExplainCommand implements Callable<Integer> {
  private final Desk desk;

  @Parameters(index = "0", paramLabel = "FOLDER", description = "The folder of the order.")
  private Path folder = Path.of("");

  @Parameters(index = "1", paramLabel = "MARK", description = "A mark of a piece or a run.")
  private String mark = "";

  @Mixin private PlanningOptions planning = new PlanningOptions();
  @Mixin private PaperOptions papers = new PaperOptions();

  ExplainCommand(Desk desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() {
    SavedPlan saved = SavedPlan.in(folder);
    if (saved instanceof SavedPlan.Unreadable unreadable) {
      desk.tell(unreadable.faults());
      return ExitStatus.WRONG_INPUT;
    }
    if (saved instanceof SavedPlan.Broken broken) {
      desk.tell(CheckText.render(broken.faults(), PaperOptions.plain()));
      return ExitStatus.WRONG_INPUT;
    }
    OrderInput input = desk.read(folder, JobChoice.firm().only(planning.jobs()));
    if (input == null) {
      return ExitStatus.WRONG_INPUT;
    }
    List<CheckedPlan> kept = saved instanceof SavedPlan.Sound sound ? sound.plans() : List.of();
    Explained explained =
        desk.plan(
            input,
            input.materialOrders(),
            planning,
            (planner, effort) -> {
              List<CheckedPlan> plans = kept;
              PlanResult result = null;
              if (plans.isEmpty()) {
                result =
                    planner.plan(input.order().shop(), input.materialOrders(), Map.of(), effort);
                plans =
                    result instanceof PlanResult.Planned planned
                        ? List.of(planned.plan())
                        : List.of();
              }
              OneMore oneMore = new OneMore(planner);
              return new Explained(
                  result,
                  plans,
                  plans.stream().map(plan -> MarkPaper.of(plan, mark, oneMore, effort)).toList());
            });
    Style style = papers.style(input.order().shop(), desk.surroundings());
    if (explained.result() != null && explained.plans().isEmpty()) {
      return desk.tellNoPlan(explained.result(), style);
    }
    List<MarkPaper> found =
        explained.papers().stream().filter(paper -> !paper.kinds().isEmpty()).toList();
    if (found.isEmpty()) {
      SortedSet<String> marks = new TreeSet<>();
      explained.plans().forEach(plan -> marks.addAll(MarkPaper.marks(plan)));
      return tellUnknown(marks);
    }
    // One answer for each order that has the mark: pieces added later are on a later order.
    for (MarkPaper paper : found) {
      desk.print(
          papers.isJson() ? MarkJson.text(paper, style.units()) : MarkText.render(paper, style));
    }
    return desk.statusOf(explained.plans(), planning);
  }

  private int tellUnknown(SortedSet<String> marks) {
    desk.tell(
        "lapwright: "
            + mark
            + ": nothing that is planned has this mark. "
            + Nearest.advice(
                mark,
                marks,
                marks.isEmpty()
                    ? "No piece has a mark."
                    : "The marks are: " + String.join(", ", marks) + "."));
    return ExitStatus.WRONG_INPUT;
  }

  /** What was planned now, null for saved orders; the plans to look in, and what they say. */
  private record Explained(
      @Nullable PlanResult result, List<CheckedPlan> plans, List<MarkPaper> papers) {}
}

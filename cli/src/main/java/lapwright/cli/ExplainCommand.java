package lapwright.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedSet;
import java.util.concurrent.Callable;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.check.CheckedPlan;
import lapwright.compare.OneMore;
import lapwright.compare.Unanswered;
import lapwright.effort.Effort;
import lapwright.files.OrderInput;
import lapwright.files.answers.ItemJson;
import lapwright.files.answers.MarkJson;
import lapwright.files.jobs.JobChoice;
import lapwright.files.source.Nearest;
import lapwright.paperwork.ItemPaper;
import lapwright.paperwork.MarkPaper;
import lapwright.print.CheckText;
import lapwright.print.ItemText;
import lapwright.print.MarkText;
import lapwright.print.Style;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Where the pieces of one mark or item land, and what one more would cost. */
@Command(
    name = "explain",
    description = {
      "Where each piece of a mark lands: on which ticket, from which stick, beside what; and what one"
          + " more would cost, which is planned. Of plan.json in the folder where 'order --save' has"
          + " left one, else planned now. Of an item: which job needs it, and where it comes from.",
    },
    footerHeading = "%nExample:%n",
    footer = "  lapwright explain my-shop P1")
final class ExplainCommand implements Callable<Integer> {
  private final Desk desk;
  private final Unanswered unanswered = new Unanswered();

  @Parameters(index = "0", paramLabel = "FOLDER", description = "The folder of the order.")
  private Path folder = Path.of("");

  @Parameters(
      index = "1",
      paramLabel = "MARK",
      description = "A mark of a piece or a run, or the name of an item.")
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
              if (!kept.isEmpty()) {
                return explained(kept, planner, effort);
              }
              PlanResult result =
                  planner.plan(
                      input.order().shop(),
                      input.materialOrders(),
                      input.itemOrders(),
                      Map.of(),
                      effort);
              return result instanceof PlanResult.Planned planned
                  ? explained(List.of(planned.plan()), planner, effort)
                  : new Explained(result, List.of(), null);
            });
    Style style = papers.style(input.order().shop(), desk.surroundings());
    MarkPaper paper = explained.paper();
    if (paper == null) {
      return desk.tellNoPlan(Objects.requireNonNull(explained.noPlan()), style);
    }
    if (paper.kinds().isEmpty()) {
      ItemPaper item = ItemPaper.of(explained.plans(), mark);
      if (item.orders().isEmpty()) {
        return tellUnknown(explained.plans());
      }
      desk.print(papers.isJson() ? ItemJson.text(item) : ItemText.render(item, style));
      return desk.statusOf(explained.plans(), planning);
    }
    desk.print(
        papers.isJson() ? MarkJson.text(paper, style.units()) : MarkText.render(paper, style));
    desk.tell(unanswered);
    return desk.statusOf(explained.plans(), planning);
  }

  private int tellUnknown(List<CheckedPlan> plans) {
    SortedSet<String> marks = MarkPaper.marks(plans);
    SortedSet<String> names = ItemPaper.items(plans);
    names.addAll(marks);
    desk.tell(
        "lapwright: "
            + mark
            + ": nothing that is planned has this mark. "
            + Nearest.advice(
                mark,
                names,
                marks.isEmpty()
                    ? "No piece has a mark."
                    : "The marks are: " + String.join(", ", marks) + "."));
    return ExitStatus.WRONG_INPUT;
  }

  private Explained explained(List<CheckedPlan> plans, Planner planner, Effort effort) {
    return new Explained(
        null, plans, MarkPaper.of(plans, mark, new OneMore(planner, unanswered), effort));
  }

  /**
   * @param noPlan why there is none; null where there is
   * @param plans of the orders, the first first
   */
  private record Explained(
      @Nullable PlanResult noPlan, List<CheckedPlan> plans, @Nullable MarkPaper paper) {}
}

package lapwright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.Callable;
import lapwright.PlanResult;
import lapwright.files.JobChoice;
import lapwright.files.OrderInput;
import lapwright.files.WholeFolder;
import lapwright.paperwork.TicketPaper;
import lapwright.print.Style;
import lapwright.print.TicketText;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** How to cut it: the saved plan, or one that is made now. */
@Command(
    name = "cut",
    mixinStandardHelpOptions = true,
    description = {
      "Tickets for the saw: which stick to take, where to cut it, whose piece it is, what is left;"
          + " then the pieces of each job. Of plan.json in the folder where 'order --save' has left"
          + " one, else planned now.",
    },
    footerHeading = "%nExample:%n",
    footer = "  lapwright cut my-shop --all > tickets.txt%n")
final class CutCommand implements Callable<Integer> {
  private final Desk desk;

  @Parameters(paramLabel = "FOLDER", description = "The folder of the order.")
  private Path folder = Path.of("");

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description =
          "Also write tickets.csv, on-hand-after.csv and rack-after.csv there: all of them, or"
              + " none.")
  private @Nullable Path out;

  @Mixin private PlanningOptions planning = new PlanningOptions();
  @Mixin private PaperOptions papers = new PaperOptions();

  CutCommand(Desk desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() throws IOException {
    OrderInput input = desk.read(folder, JobChoice.firm().only(planning.jobs()));
    if (input == null) {
      return ExitStatus.WRONG_INPUT;
    }
    Style style = papers.style(input.order().shop(), desk.surroundings());
    PlanResult result =
        desk.plan(
            input,
            input.materialOrders(),
            planning,
            (planner, effort) ->
                planner.plan(input.order().shop(), input.materialOrders(), Map.of(), effort));
    if (!(result instanceof PlanResult.Planned planned)) {
      return desk.tellNoPlan(result, style);
    }
    desk.print(TicketText.render(TicketPaper.of(planned.plan()), style));
    if (out != null) {
      Papers all = new Papers(input, planned.plan(), null, papers.day(desk.surroundings()));
      WholeFolder.write(out, all.cuttingFiles(style.units()));
    }
    return desk.statusOf(planned.plan(), planning);
  }
}

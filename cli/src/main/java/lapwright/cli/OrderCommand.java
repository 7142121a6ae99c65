package lapwright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.Callable;
import lapwright.PlanResult;
import lapwright.compare.CombinedResult;
import lapwright.compare.Combining;
import lapwright.files.JobChoice;
import lapwright.files.OrderInput;
import lapwright.files.WholeFolder;
import lapwright.files.saved.PlanFile;
import lapwright.print.OrderText;
import lapwright.print.Style;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What to buy, for all firm jobs together. */
@Command(
    name = "order",
    description = {
      "What to buy for all firm jobs together, from whom, at the least cost, and what ordering them"
          + " together saves.",
    },
    footerHeading = "%nExample:%n",
    footer = "  lapwright order my-shop --save --out papers")
final class OrderCommand implements Callable<Integer> {
  private final Desk desk;

  @Parameters(paramLabel = "FOLDER", description = "The folder of the order.")
  private Path folder = Path.of("");

  @Option(
      names = "--save",
      description = "Keep the plan as plan.json in the folder; 'cut' then prints it.")
  private boolean save;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description =
          "Also write order.csv, tickets.csv, waste.csv, plan.json, on-hand-after.csv and"
              + " rack-after.csv there: all of them, or none.")
  private @Nullable Path out;

  @Mixin private PlanningOptions planning = new PlanningOptions();
  @Mixin private PaperOptions papers = new PaperOptions();

  OrderCommand(Desk desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() throws IOException {
    OrderInput input = desk.read(folder, JobChoice.firm().only(planning.jobs()));
    if (input == null) {
      return ExitStatus.WRONG_INPUT;
    }
    Style style = papers.style(input.order().shop(), desk.surroundings());
    CombinedResult combined =
        desk.plan(
            input,
            input.materialOrders(),
            planning,
            (planner, effort) ->
                new Combining(planner, desk.surroundings().threads())
                    .plan(input.order().shop(), input.materialOrders(), effort));
    if (!(combined.result() instanceof PlanResult.Planned planned)) {
      return desk.tellNoPlan(combined.result(), style);
    }
    Papers all =
        new Papers(input, planned.plan(), combined.saving(), papers.day(desk.surroundings()));
    desk.print(papers.isJson() ? all.json() : OrderText.render(all.order(), style));
    if (save) {
      WholeFolder.write(folder, Map.of(PlanFile.NAME, all.json()));
    }
    if (out != null) {
      WholeFolder.write(out, all.files(style.units()));
    }
    return desk.statusOf(planned.plan(), planning);
  }
}

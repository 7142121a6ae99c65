package lapwright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.compare.Dividing;
import lapwright.compare.Unanswered;
import lapwright.effort.Effort;
import lapwright.files.OrderInput;
import lapwright.files.jobs.JobChoice;
import lapwright.files.papers.WasteCsv;
import lapwright.files.papers.WholeFolder;
import lapwright.files.saved.PlanFile;
import lapwright.files.source.Nearest;
import lapwright.measure.Length;
import lapwright.paperwork.WastePaper;
import lapwright.print.Style;
import lapwright.print.WasteText;
import lapwright.shop.ItemOrder;
import lapwright.shop.JobStatus;
import lapwright.shop.MaterialOrder;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Where the material goes. */
@Command(
    name = "waste",
    description = {
      "Where the material goes, by material, by job and in total: for firm jobs and bids together,"
          + " or for one kind only.",
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  lapwright waste my-shop --bids",
      "  lapwright waste my-shop --job hay-barn --with-week",
      "  lapwright waste my-shop --dimensions",
      "  lapwright waste my-shop --stock-length 20' --stock-length 24'",
      "  lapwright waste my-shop --material eave-trim --best-length 8ft..14ft"
    })
final class WasteCommand implements Callable<Integer> {
  private final Desk desk;

  @Parameters(paramLabel = "FOLDER", description = "The folder of the order.")
  private Path folder = Path.of("");

  @Option(names = "--firm", description = "Only firm jobs.")
  private boolean firm;

  @Option(names = "--bids", description = "Only bids.")
  private boolean bids;

  @Option(
      names = "--stock-length",
      paramLabel = "LENGTH",
      converter = StockLength.class,
      description =
          "What if stock came in this length only? Rack and sticks on hand are left aside. Given"
              + " several times, the lengths stand side by side.")
  private List<Length> stockLengths = new ArrayList<>();

  @Option(
      names = "--best-length",
      paramLabel = "FROM..TO",
      converter = LengthRange.Converter.class,
      description =
          "Which stock length between these, and which two together, would buy the least, if they"
              + " were cut to order? Runs are joined anew for each, with no more joints a line than"
              + " now.")
  private @Nullable LengthRange bestLength;

  @Option(
      names = "--with-week",
      description =
          "With --job: what that job costs alone, bought new, and what it adds when it is bought"
              + " together with the firm jobs.")
  private boolean withWeek;

  @Option(
      names = "--dimensions",
      description =
          "Which marks would cost less if they were up to 1/2 in shorter? Each is confirmed by a"
              + " plan.")
  private boolean dimensions;

  @Option(
      names = "--material",
      paramLabel = "NAME",
      description = "Only this material; may be given several times.")
  private List<String> materials = new ArrayList<>();

  @Option(names = "--out", paramLabel = "DIR", description = "Also write waste.csv there.")
  private @Nullable Path out;

  @Mixin private PlanningOptions planning = new PlanningOptions();
  @Mixin private PaperOptions papers = new PaperOptions();

  WasteCommand(Desk desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() throws IOException {
    if (withWeek && planning.jobs().isEmpty()) {
      desk.tell("lapwright: --with-week asks about a bid: name it with --job NAME.");
      return ExitStatus.WRONG_USAGE;
    }
    if (questions() > 1) {
      desk.tell(
          "lapwright: --with-week, --stock-length, --best-length and --dimensions are four questions:"
              + " one at a time.");
      return ExitStatus.WRONG_USAGE;
    }
    if (questions() == 1 && out != null) {
      desk.tell("lapwright: --out writes waste.csv, which does not hold that answer; use --json.");
      return ExitStatus.WRONG_USAGE;
    }
    if (withWeek && (firm || bids || !materials.isEmpty())) {
      desk.tell(
          "lapwright: --with-week takes the job and all firm jobs, whole: leave out --firm, --bids"
              + " and --material.");
      return ExitStatus.WRONG_USAGE;
    }
    JobChoice choice =
        withWeek
            ? JobChoice.firm().and(planning.jobs())
            : JobChoice.of(statuses()).only(planning.jobs());
    OrderInput input = desk.read(folder, choice);
    if (input == null) {
      return ExitStatus.WRONG_INPUT;
    }
    Style style = papers.style(input.order().shop(), desk.surroundings());
    List<MaterialOrder> orders = chosen(input);
    if (orders == null) {
      return ExitStatus.WRONG_INPUT;
    }
    Estimating estimating = new Estimating(desk, planning, papers, input);
    if (withWeek) {
      if (!(SavedPlan.in(folder) instanceof SavedPlan.None)) {
        desk.tell(
            "The order saved in this folder is left aside: the week is planned as if nothing were"
                + " bought yet.");
      }
      return estimating.besideWeek(new TreeSet<>(planning.jobs()));
    }
    if (!stockLengths.isEmpty()) {
      return estimating.inOtherLengths(orders, stockLengths);
    }
    if (bestLength != null) {
      return estimating.bestLength(orders, bestLength);
    }
    if (dimensions) {
      return estimating.dimensions(orders);
    }
    List<ItemOrder> items = materials.isEmpty() ? input.itemOrders() : List.of();
    Unanswered unanswered = new Unanswered();
    PlanResult result =
        desk.plan(
            input,
            orders,
            planning,
            (planner, effort) -> divided(planner, input, orders, items, style, unanswered, effort));
    if (!(result instanceof PlanResult.Planned planned)) {
      return desk.tellNoPlan(result, style);
    }
    WastePaper paper = WastePaper.of(planned.plan());
    desk.print(
        papers.isJson()
            ? PlanFile.text(planned.plan().plan(), input.digests(), null)
            : WasteText.render(paper, style));
    desk.tell(unanswered);
    if (out != null) {
      WholeFolder.write(out, Map.of(WasteCsv.FILE, WasteCsv.text(paper)));
    }
    return desk.statusOf(planned.plan(), planning);
  }

  private int questions() {
    return (withWeek ? 1 : 0)
        + (dimensions ? 1 : 0)
        + (stockLengths.isEmpty() ? 0 : 1)
        + (bestLength == null ? 0 : 1);
  }

  /** Dividing the cost takes plans of its own, so it is left out where nothing would show it. */
  private PlanResult divided(
      Planner planner,
      OrderInput input,
      List<MaterialOrder> orders,
      List<ItemOrder> items,
      Style style,
      Unanswered unanswered,
      Effort effort) {
    PlanResult result = planner.plan(input.order().shop(), orders, items, Map.of(), effort);
    return result instanceof PlanResult.Planned planned
            && (papers.isJson() || WasteText.isWhole(WastePaper.of(planned.plan()), style))
        ? new PlanResult.Planned(new Dividing(planner).divide(planned.plan(), unanswered, effort))
        : result;
  }

  /** The orders that are asked for; null when a material has no such name, which is told. */
  private @Nullable List<MaterialOrder> chosen(OrderInput input) {
    List<MaterialOrder> orders = input.materialOrders();
    if (materials.isEmpty()) {
      return orders;
    }
    List<String> known = orders.stream().map(order -> order.material().id()).toList();
    for (String name : materials) {
      if (!known.contains(name)) {
        desk.tell(
            "lapwright: --material "
                + name
                + ": these jobs need no such material. "
                + Nearest.advice(name, known, "They need: " + String.join(", ", known) + "."));
        return null;
      }
    }
    return orders.stream().filter(order -> materials.contains(order.material().id())).toList();
  }

  private Set<JobStatus> statuses() {
    if (firm == bids) {
      return EnumSet.of(JobStatus.FIRM, JobStatus.BID);
    }
    return EnumSet.of(firm ? JobStatus.FIRM : JobStatus.BID);
  }
}

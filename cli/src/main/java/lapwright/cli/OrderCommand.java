package lapwright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Predicate;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.compare.CombinedResult;
import lapwright.compare.Combining;
import lapwright.compare.Comparisons;
import lapwright.compare.CostlyMark;
import lapwright.compare.Dividing;
import lapwright.compare.JointChoice;
import lapwright.compare.LaterItems;
import lapwright.compare.LaterOrder;
import lapwright.compare.LaterOrder.PieceCount;
import lapwright.compare.SameLot;
import lapwright.compare.SupplierAlone;
import lapwright.compare.Unanswered;
import lapwright.effort.Effort;
import lapwright.effort.SideBySide;
import lapwright.files.OrderInput;
import lapwright.files.jobs.JobChoice;
import lapwright.files.papers.WholeFolder;
import lapwright.files.saved.PlanFile;
import lapwright.paperwork.OrderFacts.Reason;
import lapwright.plan.Division;
import lapwright.plan.OrderPlan;
import lapwright.print.DivisionText;
import lapwright.print.LaterText;
import lapwright.print.OrderText;
import lapwright.print.Style;
import lapwright.shop.JobStatus;
import lapwright.shop.RunNeed;
import lapwright.shop.Shop;
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
  /** Single marks may take so small a part of the time. */
  private static final int PART_FOR_MARKS = 12;

  /** What another choice of joints would cost, so small a part. */
  private static final int PART_FOR_JOINTS = 6;

  private final Desk desk;

  @Parameters(paramLabel = "FOLDER", description = "The folder of the order.")
  private Path folder = Path.of("");

  @Option(
      names = "--save",
      description = "Keep the plan as plan.json in the folder; 'cut' then prints it.")
  private boolean save;

  @Option(
      names = "--replace",
      description =
          "With --save: forget the order that is saved in the folder and keep this one instead.")
  private boolean replace;

  @Option(
      names = "--more",
      description =
          "Keep the saved order and its tickets, and buy only what firm jobs need beyond it; what"
              + " it left over is used at no cost. With --save, both are kept.")
  private boolean more;

  @Option(
      names = "--only-supplier",
      paramLabel = "NAME",
      description = "Buy from this supplier only; may be given several times.")
  private List<String> suppliers = new ArrayList<>();

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description =
          "Also write order.csv, tickets.csv, waste.csv, plan.json, on-hand-after.csv,"
              + " rack-after.csv and, where there are runs, layouts.csv there: all of them, or"
              + " none.")
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
    Wanted orders = OneSupplier.only(suppliers, input, desk);
    if (orders == null) {
      return ExitStatus.WRONG_INPUT;
    }
    return more ? more(input, orders) : anew(input, orders);
  }

  /** The plan, and what it is held against. */
  private record Asked(CombinedResult combined, Comparisons comparisons, Unanswered unanswered) {}

  private Asked ask(Planner planner, OrderInput input, Wanted orders, Effort effort) {
    Shop shop = input.order().shop();
    Unanswered unanswered = new Unanswered();
    CombinedResult combined =
        divided(
            planner,
            new Combining(planner, desk.surroundings().threads(), unanswered)
                .plan(shop, orders.materials(), orders.items(), effort),
            unanswered,
            effort);
    boolean worthAsking =
        combined.result() instanceof PlanResult.Planned && suppliers.isEmpty() && orders.isPriced();
    List<SupplierAlone> alone =
        worthAsking
            ? SupplierAlone.each(
                planner, shop, orders.materials(), orders.items(), unanswered, effort)
            : List.of();
    return new Asked(
        combined,
        new Comparisons(
            combined.saving(),
            alone,
            costly(planner, combined.result(), unanswered, effort),
            joints(planner, combined.result(), unanswered, effort)),
        unanswered);
  }

  private List<JointChoice.Answer> joints(
      Planner planner, PlanResult result, Unanswered unanswered, Effort effort) {
    Effort share = effort.atMost(planning.nanos() / PART_FOR_JOINTS);
    return result instanceof PlanResult.Planned planned
        ? JointChoice.each(planner, planned.plan(), unanswered, share)
        : List.of();
  }

  private List<CostlyMark> costly(
      Planner planner, PlanResult result, Unanswered unanswered, Effort effort) {
    if (papers.isJson() || !(result instanceof PlanResult.Planned planned)) {
      return List.of();
    }
    OrderPlan plan = planned.plan().plan();
    Effort share = effort.atMost(planning.nanos() / PART_FOR_MARKS);
    return SideBySide.map(
            desk.surroundings().threads(),
            plan.materials(),
            material ->
                unanswered.ask(
                    "marks that alone cost two sticks (" + material.material() + ")",
                    Optional.<CostlyMark>empty(),
                    () -> CostlyMark.of(planner, plan.shop(), material, share)))
        .stream()
        .flatMap(Optional::stream)
        .toList();
  }

  private int anew(OrderInput input, Wanted orders) throws IOException {
    Style style = papers.style(input.order().shop(), desk.surroundings());
    Asked asked =
        desk.plan(
            input,
            orders.materials(),
            planning,
            (planner, effort) -> ask(planner.buyingOnlyFrom(suppliers), input, orders, effort));
    if (!(asked.combined().result() instanceof PlanResult.Planned planned)) {
      return desk.tellNoPlan(asked.combined().result(), style);
    }
    Papers all =
        new Papers(
            input,
            List.of(),
            null,
            planned.plan(),
            asked.comparisons(),
            OrdersBeside.holding(folder, input),
            papers.day(desk.surroundings()));
    desk.print(
        papers.isJson() ? all.json() : OrderText.render(all.order(), style) + eachPart(all, style));
    desk.tell(asked.unanswered());
    if (save && !replace && SavedPlan.in(folder).isOtherThan(planned.plan().plan())) {
      desk.tell(
          "lapwright: not saved: "
              + folder.resolve(PlanFile.NAME)
              + " holds another order. '--more --save' keeps it and buys only what came later;"
              + " '--save --replace' forgets it and keeps this plan instead.");
      return ExitStatus.WRONG_INPUT;
    }
    return write(all, style);
  }

  /** What is missing beyond the saved order. */
  private int more(OrderInput input, Wanted orders) throws IOException {
    SavedPlan.Sound saved = desk.savedPlan(folder);
    if (saved == null) {
      return ExitStatus.WRONG_INPUT;
    }
    List<String> countedOff =
        new ArrayList<>(LaterOrder.countedOff(saved.orders(), orders.materials()));
    countedOff.addAll(LaterItems.countedOff(saved.orders(), orders.items()));
    if (!countedOff.isEmpty()) {
      desk.tell(
          "lapwright: on-hand.csv is counted off already, as the saved order leaves it ("
              + String.join(", ", countedOff)
              + "). --more counts off by itself: put the file back as it was before that order, or"
              + " set its jobs to done and begin a new order with --save --replace.");
      return ExitStatus.WRONG_INPUT;
    }
    Style style = papers.style(input.order().shop(), desk.surroundings());
    LaterOrder later = LaterOrder.of(saved.orders(), orders.materials());
    LaterItems items =
        LaterItems.of(saved.orders(), orders.items(), job -> mayGiveBack(input, job));
    Predicate<PieceCount> concerned = piece -> isPlannedFor(input, piece.job());
    String added = LaterText.render(later, items, concerned, style);
    if (!later.changedRuns().isEmpty()) {
      for (RunNeed run : later.changedRuns()) {
        desk.tell(
            "lapwright: run "
                + run.run().mark()
                + " of "
                + run.job()
                + " is not as the saved order has it, and its pieces are on tickets. Put it back as it was and add what is new under another mark; or plan"
                + " everything anew with --save --replace.");
      }
      return ExitStatus.WRONG_INPUT;
    }
    if (later.orders().isEmpty() && items.orders().isEmpty()) {
      desk.print(
          papers.isJson() ? PlanFile.text(saved.orders(), saved.inputs(), saved.saving()) : added);
      return desk.statusOf(saved.plans(), planning);
    }
    SameLot lots = new SameLot(saved.orders());
    PlanResult result =
        desk.plan(
            input,
            saved.orders(),
            later.orders(),
            planning,
            (planner, effort) ->
                planner
                    .buyingOnlyFrom(suppliers)
                    .plan(
                        input.order().shop(),
                        lots.limited(planner, input.order().shop(), later.orders(), effort),
                        items.orders(),
                        Map.of(),
                        effort));
    if (!(result instanceof PlanResult.Planned planned)) {
      return desk.tellNoPlan(result, style);
    }
    Papers all =
        new Papers(
            input,
            saved.plans(),
            saved.saving(),
            planned.plan(),
            Comparisons.NONE,
            OrdersBeside.holding(folder, input),
            papers.day(desk.surroundings()));
    all.checkTogether();
    lots.mixed(planned.plan().plan()).forEach(mixed -> desk.tell(warning(mixed)));
    desk.print(papers.isJson() ? all.json() : OrderText.render(all.order(), style) + "\n" + added);
    return write(all, style);
  }

  private static String warning(SameLot.Mixed mixed) {
    String what =
        "lapwright: lots of "
            + mixed.material()
            + " must not mix within "
            + (mixed.run().isEmpty() ? mixed.job() : "run " + mixed.run() + " of " + mixed.job())
            + ", and the saved order cuts it for that "
            + (mixed.run().isEmpty() ? "job" : "run")
            + " already. ";
    return switch (mixed.standing()) {
      case ANOTHER_DELIVERY ->
          what
              + "What is left of that lot does not suffice, so more is bought of the same maker:"
              + " ask him for the same lot, or plan everything anew with --save --replace.";
      case ANOTHER_LOT ->
          what
              + "Neither what is left of that lot nor its maker gives what is added, so it comes"
              + " from another lot: put that on a building of its own, or plan everything anew"
              + " with --save --replace.";
    };
  }

  /** A job that is done, or that was not asked for, has no say in what is not needed any more. */
  private boolean isPlannedFor(OrderInput input, String job) {
    return (planning.jobs().isEmpty() || planning.jobs().contains(job))
        && input.order().jobs().stream()
            .noneMatch(one -> one.name().equals(job) && one.status() == JobStatus.DONE);
  }

  /**
   * Items of jobs that need fewer now, that became bids again or are gone serve others; those of
   * jobs that are done, or that this order leaves aside, stay with them.
   */
  private static boolean mayGiveBack(OrderInput input, String job) {
    return input.leftOut().stream()
        .noneMatch(left -> left.job().equals(job) && left.reason() != Reason.BID);
  }

  private int write(Papers all, Style style) throws IOException {
    if (save) {
      WholeFolder.write(folder, Map.of(PlanFile.NAME, all.json()));
    }
    if (out != null) {
      WholeFolder.write(out, all.files(style.units()));
    }
    return desk.statusOf(all.plan(), planning);
  }

  /** Dividing the cost takes plans of its own, so it is left out where nothing would show it. */
  private CombinedResult divided(
      Planner planner, CombinedResult combined, Unanswered unanswered, Effort effort) {
    boolean shown = save || out != null || papers.isJson() || papers.isAll();
    return shown && combined.result() instanceof PlanResult.Planned planned
        ? new CombinedResult(
            new PlanResult.Planned(
                new Dividing(planner).divide(planned.plan(), unanswered, effort)),
            combined.saving())
        : combined;
  }

  /** What each job pays, where everything is shown. */
  private String eachPart(Papers all, Style style) {
    Division division = all.plan().plan().division();
    return papers.isAll() && division != null && division.jobs().size() > 1
        ? "\n" + DivisionText.render(division, all.plan().plan().shop().currency(), style)
        : "";
  }
}

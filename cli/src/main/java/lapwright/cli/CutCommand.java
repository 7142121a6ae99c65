package lapwright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import lapwright.PlanResult;
import lapwright.check.CheckedPlan;
import lapwright.compare.Comparisons;
import lapwright.files.FolderReading;
import lapwright.files.OrderFolder;
import lapwright.files.OrderInput;
import lapwright.files.jobs.JobChoice;
import lapwright.files.papers.WholeFolder;
import lapwright.files.saved.PlanFile;
import lapwright.files.source.Nearest;
import lapwright.paperwork.TicketPaper;
import lapwright.paperwork.TicketPaper.JobList;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Proof;
import lapwright.print.CheckText;
import lapwright.print.ShortageText;
import lapwright.print.Style;
import lapwright.print.TicketText;
import lapwright.shop.ItemOrder;
import lapwright.shop.MaterialOrder;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** How to cut it: the saved plan, or one that is made now. */
@Command(
    name = "cut",
    description = {
      "Tickets for the saw: which stick to take, where to cut it, whose piece it is, what is left;"
          + " then the pieces of each job, and how its runs are laid. Of plan.json in the folder"
          + " where 'order --save' has left one, else planned now.",
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
          "Also write tickets.csv, on-hand-after.csv, rack-after.csv and, where there are runs,"
              + " layouts.csv there: all of them, or none.")
  private @Nullable Path out;

  @Option(
      names = "--buy-nothing",
      description =
          "Plan now, whatever is saved, from sticks on hand and the rack only, drawing as little of"
              + " them as will do.")
  private boolean buyNothing;

  @Mixin private PlanningOptions planning = new PlanningOptions();
  @Mixin private PaperOptions papers = new PaperOptions();

  CutCommand(Desk desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() throws IOException {
    if (buyNothing) {
      return plannedNow();
    }
    SavedPlan saved = SavedPlan.in(folder);
    if (saved instanceof SavedPlan.Unreadable unreadable) {
      desk.tell(unreadable.faults());
      return ExitStatus.WRONG_INPUT;
    }
    if (saved instanceof SavedPlan.Broken broken) {
      desk.tell(CheckText.render(broken.faults(), PaperOptions.plain()));
      return ExitStatus.WRONG_INPUT;
    }
    return saved instanceof SavedPlan.Sound sound ? ofSaved(sound) : plannedNow();
  }

  private int plannedNow() throws IOException {
    OrderInput input = desk.read(folder, JobChoice.firm().only(planning.jobs()));
    if (input == null) {
      return ExitStatus.WRONG_INPUT;
    }
    List<MaterialOrder> orders =
        buyNothing
            ? input.materialOrders().stream().map(MaterialOrder::buyingNothing).toList()
            : input.materialOrders();
    List<ItemOrder> items =
        buyNothing
            ? input.itemOrders().stream().map(item -> item.onlyFrom(List.of())).toList()
            : input.itemOrders();
    PlanResult result =
        desk.plan(
            input,
            orders,
            planning,
            (planner, effort) ->
                planner.plan(input.order().shop(), orders, items, Map.of(), effort));
    if (buyNothing && result instanceof PlanResult.Impossible impossible) {
      desk.tell(
          ShortageText.renderFromStock(
                  impossible.shortages(), papers.style(input.order().shop(), desk.surroundings()))
              .stripTrailing());
      return ExitStatus.NO_PLAN;
    }
    if (buyNothing && result instanceof PlanResult.Planned planned) {
      desk.tell(drawn(planned.plan().plan().materials()));
    }
    if (!(result instanceof PlanResult.Planned planned)) {
      return desk.tellNoPlan(result, papers.style(input.order().shop(), desk.surroundings()));
    }
    return tell(List.of(planned.plan()), input, input.digests(), List.of());
  }

  private static String drawn(List<MaterialPlan> materials) {
    return materials.stream().allMatch(material -> material.proof() == Proof.PROVED)
        ? "Nothing is bought. Proved: no plan from what is there draws less of it."
        : "Nothing is bought. Not proved that no plan draws less; more --time may tell.";
  }

  /** The saved plan as it is, whatever has become of the files that it was made from. */
  private int ofSaved(SavedPlan.Sound saved) throws IOException {
    FolderReading reading = OrderFolder.read(folder, JobChoice.firm());
    OrderInput input = reading instanceof FolderReading.Sound sound ? sound.input() : null;
    if (input == null) {
      desk.tell(
          "The folder has faults now; 'lapwright check' names them. This is the plan as saved.");
    } else if (!input.digests().equals(saved.inputs())) {
      desk.tell(
          "Files have changed since the plan was saved: "
              + String.join(", ", differing(saved.inputs(), input.digests()))
              + ". This is the plan as saved; 'lapwright check' tells whether it still fits.");
    }
    return tell(saved.plans(), input, saved.inputs(), planning.jobs());
  }

  private static SortedSet<String> differing(Map<String, String> before, Map<String, String> now) {
    SortedSet<String> files = new TreeSet<>(before.keySet());
    files.addAll(now.keySet());
    files.removeIf(file -> Objects.equals(before.get(file), now.get(file)));
    return files;
  }

  /**
   * Prints the tickets, and writes them where that is asked.
   *
   * @param plans of orders that were placed one after the other, the first first
   * @param input null when the folder has faults
   * @param jobs only tickets with pieces of these; all when empty
   */
  private int tell(
      List<CheckedPlan> plans,
      @Nullable OrderInput input,
      SortedMap<String, String> digests,
      List<String> jobs)
      throws IOException {
    TicketPaper paper = TicketPaper.of(plans);
    List<String> known = paper.jobs().stream().map(JobList::job).distinct().toList();
    for (String job : jobs) {
      if (!known.contains(job)) {
        desk.tell(
            "lapwright: --job "
                + job
                + ": the saved plan has no such job. "
                + Nearest.advice(job, known, "It has: " + String.join(", ", known) + "."));
        return ExitStatus.WRONG_INPUT;
      }
    }
    Style style = papers.style(plans.get(plans.size() - 1).plan().shop(), desk.surroundings());
    desk.print(
        papers.isJson()
            ? PlanFile.text(plans.stream().map(CheckedPlan::plan).toList(), digests, null)
            : TicketText.render(jobs.isEmpty() ? paper : paper.only(jobs), style));
    if (out != null) {
      if (input == null) {
        desk.tell(
            "Nothing was written to " + out + ": what is left is only known of a sound folder.");
        return ExitStatus.WRONG_INPUT;
      }
      Papers all =
          new Papers(
              input,
              plans.subList(0, plans.size() - 1),
              null,
              plans.get(plans.size() - 1),
              Comparisons.NONE,
              List.of(),
              papers.day(desk.surroundings()));
      WholeFolder.write(out, all.cuttingFiles(style.units()));
    }
    return desk.statusOf(plans, planning);
  }
}

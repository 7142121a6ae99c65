package lapwright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.Predicate;
import lapwright.check.CheckedPlan;
import lapwright.compare.Change;
import lapwright.compare.PlanChanges;
import lapwright.files.OrderInput;
import lapwright.files.answers.CheckJson;
import lapwright.files.jobs.JobChoice;
import lapwright.print.ChangesText;
import lapwright.print.CheckText;
import lapwright.print.Style;
import lapwright.shop.Job;
import lapwright.shop.JobStatus;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Is the input sound, and is the saved plan still good. */
@Command(
    name = "check",
    description = {
      "Reads the folder and names everything that is wrong in it. Where 'order --save' has left"
          + " plan.json, checks that plan as well: that it keeps every rule, that its proof holds,"
          + " and that it still fits the jobs and the stock.",
    },
    footerHeading = "%nExample:%n",
    footer = "  lapwright check my-shop%n")
final class CheckCommand implements Callable<Integer> {
  private final Desk desk;

  @Parameters(paramLabel = "FOLDER", description = "The folder of the order.")
  private Path folder = Path.of("");

  @Option(
      names = "--job",
      paramLabel = "NAME",
      description = "The plan was saved for this job only; may be given several times.")
  private List<String> jobs = new ArrayList<>();

  @Mixin private PaperOptions papers = new PaperOptions();

  CheckCommand(Desk desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() {
    OrderInput input = desk.read(folder, JobChoice.firm().only(jobs));
    if (input == null) {
      return ExitStatus.WRONG_INPUT;
    }
    if (!papers.isJson()) {
      desk.print(InputSummary.of(input));
    }
    SavedPlan saved = SavedPlan.in(folder);
    if (saved instanceof SavedPlan.Unreadable unreadable) {
      desk.tell(unreadable.faults());
      return ExitStatus.WRONG_INPUT;
    }
    if (saved instanceof SavedPlan.Broken broken) {
      desk.print(
          papers.isJson()
              ? CheckJson.broken(input, broken.faults())
              : "\n" + CheckText.render(broken.faults(), PaperOptions.plain()));
      return ExitStatus.PLAN_OUTDATED;
    }
    if (saved instanceof SavedPlan.Sound sound) {
      return check(sound, input);
    }
    desk.print(
        papers.isJson()
            ? CheckJson.none(input)
            : "No plan is saved here; 'lapwright order FOLDER --save' keeps one.\n");
    return ExitStatus.DONE;
  }

  private int check(SavedPlan.Sound saved, OrderInput input) {
    Style style = papers.style(input.order().shop(), desk.surroundings());
    Set<String> planned = new HashSet<>();
    saved.orders().stream()
        .flatMap(order -> order.materials().stream())
        .flatMap(material -> material.order().needs().stream())
        .forEach(need -> planned.add(need.job()));
    saved.orders().stream()
        .flatMap(order -> order.items().stream())
        .flatMap(item -> item.order().needs().stream())
        .forEach(need -> planned.add(need.job()));
    Predicate<Job> concerned =
        job ->
            input.wanted().contains(job.name())
                || (job.status() == JobStatus.DONE && planned.contains(job.name()));
    List<Change> changes =
        PlanChanges.of(
            saved.orders(),
            input.order().materialOrders(concerned),
            input.order().itemOrders(concerned),
            style.units());
    if (papers.isJson()) {
      desk.print(CheckJson.sound(input, saved.plans(), changes));
    } else {
      desk.print("\n" + ChangesText.render(changes, style));
      for (CheckedPlan plan : saved.plans()) {
        desk.print("\n" + CheckText.render(plan, style));
      }
    }
    return changes.stream().anyMatch(change -> change.kind().spoilsPlan())
        ? ExitStatus.PLAN_OUTDATED
        : ExitStatus.DONE;
  }
}

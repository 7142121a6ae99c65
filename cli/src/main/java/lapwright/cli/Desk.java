package lapwright.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.function.BiFunction;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.check.CheckedPlan;
import lapwright.effort.Effort;
import lapwright.files.FolderReading;
import lapwright.files.JobChoice;
import lapwright.files.MarkerNames;
import lapwright.files.OrderFolder;
import lapwright.files.OrderInput;
import lapwright.files.source.Fault;
import lapwright.plan.Proof;
import lapwright.print.ShortageText;
import lapwright.print.Style;
import lapwright.shop.MaterialOrder;
import org.jspecify.annotations.Nullable;

/**
 * What the commands do alike: read a folder, plan in front of somebody, and tell what went wrong.
 */
final class Desk {
  private final Surroundings surroundings;

  Desk(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  Surroundings surroundings() {
    return surroundings;
  }

  /** The sound input; null when all its faults were told. */
  @Nullable OrderInput read(Path folder, JobChoice choice) {
    FolderReading reading = OrderFolder.read(folder, choice);
    if (reading instanceof FolderReading.Sound sound) {
      return sound.input();
    }
    tell(((FolderReading.Faulty) reading).faults());
    return null;
  }

  /** Tells all faults of an input, and how many they are. */
  void tell(List<Fault> faults) {
    surroundings.err().print(Fault.print(faults));
    surroundings.err().println(faults.size() == 1 ? "1 fault." : faults.size() + " faults.");
  }

  /** Tells one thing that somebody should know, apart from the result. */
  void tell(String message) {
    surroundings.err().println(message);
  }

  /** Prints the result. */
  void print(String text) {
    surroundings.out().print(text);
  }

  /** Does {@code work} with a planner, until it is done, the time is over, or Ctrl-C. */
  <T> T plan(
      OrderInput input,
      List<MaterialOrder> orders,
      PlanningOptions options,
      BiFunction<Planner, Effort, T> work) {
    Planner planner = new Planner(new MarkerNames(input.offcutNames()), surroundings.threads());
    return new Planning(surroundings)
        .within(
            options.nanos(), input.order().shop(), orders, effort -> work.apply(planner, effort));
  }

  /** Tells why there is no plan, and gives the exit status that says so. */
  int tellNoPlan(PlanResult result, Style style) {
    if (result instanceof PlanResult.Impossible impossible) {
      surroundings.err().print(ShortageText.render(impossible.shortages(), style));
      return ExitStatus.NO_PLAN;
    }
    tell("Stopped before every material had a plan; nothing was written. Give it more --time.");
    return ExitStatus.INTERRUPTED;
  }

  /** The exit status of a plan that was told. */
  int statusOf(CheckedPlan plan, PlanningOptions options) {
    boolean proved =
        plan.plan().materials().stream().allMatch(each -> each.proof() == Proof.PROVED);
    if (options.isProofRequired() && !proved) {
      tell("Not proved, as --require-proof asks: more --time may close what is open.");
      return ExitStatus.NOT_PROVED;
    }
    return ExitStatus.DONE;
  }
}

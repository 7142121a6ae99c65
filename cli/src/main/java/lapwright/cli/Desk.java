package lapwright.cli;

import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiFunction;
import java.util.function.BooleanSupplier;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.check.CheckedPlan;
import lapwright.compare.LaterOrder;
import lapwright.compare.Unanswered;
import lapwright.effort.Effort;
import lapwright.files.FolderReading;
import lapwright.files.MarkerNames;
import lapwright.files.OrderFolder;
import lapwright.files.OrderInput;
import lapwright.files.jobs.JobChoice;
import lapwright.files.source.Fault;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Proof;
import lapwright.print.CheckText;
import lapwright.print.ShortageText;
import lapwright.print.Style;
import lapwright.shop.MaterialOrder;
import org.jspecify.annotations.Nullable;

/**
 * What the commands do alike: read a folder, plan in front of somebody, and tell what went wrong.
 */
final class Desk {
  private final Surroundings surroundings;
  private final BooleanSupplier debug;

  /**
   * @param debug true when it is wanted to be shown where a fault of the program happened
   */
  Desk(Surroundings surroundings, BooleanSupplier debug) {
    this.surroundings = surroundings;
    this.debug = debug;
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
    return plan(input, List.of(), orders, options, work);
  }

  /** The same after orders were placed: their offcuts' and tickets' names are not given again. */
  <T> T plan(
      OrderInput input,
      List<OrderPlan> placed,
      List<MaterialOrder> orders,
      PlanningOptions options,
      BiFunction<Planner, Effort, T> work) {
    Set<String> taken = new TreeSet<>(input.offcutNames());
    for (OrderPlan order : placed) {
      for (MaterialPlan material : order.materials()) {
        material.patterns().forEach(pattern -> taken.addAll(pattern.offcutNames()));
      }
    }
    Planner planner =
        new Planner(new MarkerNames(taken), surroundings.threads())
            .continuingAfterTicket(LaterOrder.lastTicket(placed));
    return new Planning(surroundings)
        .within(
            options.nanos(), input.order().shop(), orders, effort -> work.apply(planner, effort));
  }

  /** The orders that were saved in a folder; null when there are none to be used, which is told. */
  SavedPlan.@Nullable Sound savedPlan(Path folder) {
    SavedPlan saved = SavedPlan.in(folder);
    if (saved instanceof SavedPlan.Sound sound) {
      return sound;
    }
    if (saved instanceof SavedPlan.Unreadable unreadable) {
      tell(unreadable.faults());
    } else if (saved instanceof SavedPlan.Broken broken) {
      tell(CheckText.render(broken.faults(), PaperOptions.plain()));
    } else {
      tell(
          "lapwright: no order is saved in "
              + folder
              + " to which more could be added; 'lapwright order FOLDER --save' saves one.");
    }
    return null;
  }

  /** Tells which questions beside a good plan a fault of the program left without an answer. */
  void tell(Unanswered unanswered) {
    if (unanswered.questions().isEmpty()) {
      return;
    }
    Set<String> about = new LinkedHashSet<>();
    for (Unanswered.Question question : unanswered.questions()) {
      about.add(question.about());
      if (debug.getAsBoolean()) {
        question.fault().printStackTrace(surroundings.err());
      }
    }
    tell(
        "lapwright: a fault in the program left out: "
            + String.join("; ", about)
            + ". The plan is not touched by that: it passed its check."
            + (debug.getAsBoolean()
                ? ""
                : " The same command with --debug shows where; please report that."));
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
    return statusOf(List.of(plan), options);
  }

  /** The same of the plans of several orders. */
  int statusOf(List<CheckedPlan> plans, PlanningOptions options) {
    boolean proved =
        plans.stream()
            .flatMap(plan -> plan.plan().materials().stream())
            .allMatch(each -> each.proof() == Proof.PROVED);
    if (options.isProofRequired() && !proved) {
      tell("Not proved, as --require-proof asks: more --time may close what is open.");
      return ExitStatus.NOT_PROVED;
    }
    return ExitStatus.DONE;
  }
}

package lapwright.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SortedMap;
import lapwright.check.CheckedPlan;
import lapwright.check.PlacedCheck;
import lapwright.check.PlacedVerdict;
import lapwright.check.PlanFault;
import lapwright.compare.Saving;
import lapwright.files.saved.PlanFile;
import lapwright.files.saved.PlanReading;
import lapwright.files.source.Fault;
import lapwright.plan.OrderPlan;
import org.jspecify.annotations.Nullable;

/**
 * The plan that {@code order --save} left in a folder: read, and checked before anybody uses it.
 */
sealed interface SavedPlan {
  /** There is none. */
  record None() implements SavedPlan {}

  /** The file is damaged. */
  record Unreadable(List<Fault> faults) implements SavedPlan {}

  /** The file says what cannot be. */
  record Broken(List<PlanFault> faults) implements SavedPlan {}

  /**
   * It keeps every rule, by the shop's data that it was made from.
   *
   * @param plans of the orders, in the order in which they were placed
   * @param inputs digests of the files it was made from, by path
   * @param saving what combining saved in the first; null when that was not asked
   */
  record Sound(List<CheckedPlan> plans, SortedMap<String, String> inputs, @Nullable Saving saving)
      implements SavedPlan {
    List<OrderPlan> orders() {
      return plans.stream().map(CheckedPlan::plan).toList();
    }
  }

  /** True when there is a saved order, and saving {@code plan} would lose it. */
  default boolean isOtherThan(OrderPlan plan) {
    if (this instanceof Sound sound) {
      return !PlanFile.planId(sound.orders()).equals(PlanFile.planId(plan));
    }
    return !(this instanceof None);
  }

  static SavedPlan in(Path folder) {
    Path file = folder.resolve(PlanFile.NAME);
    if (!Files.exists(file)) {
      return new None();
    }
    PlanReading reading = PlanFile.read(file);
    if (reading instanceof PlanReading.Faulty faulty) {
      return new Unreadable(faulty.faults());
    }
    PlanReading.Saved saved = (PlanReading.Saved) reading;
    PlacedVerdict verdict = PlacedCheck.check(saved.orders());
    return verdict instanceof PlacedVerdict.Sound sound
        ? new Sound(sound.plans(), saved.inputs(), saved.saving())
        : new Broken(((PlacedVerdict.Broken) verdict).faults());
  }
}

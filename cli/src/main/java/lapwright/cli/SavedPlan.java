package lapwright.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SortedMap;
import lapwright.check.CheckedPlan;
import lapwright.check.PlanCheck;
import lapwright.check.PlanFault;
import lapwright.check.Verdict;
import lapwright.files.saved.PlanFile;
import lapwright.files.saved.PlanReading;
import lapwright.files.source.Fault;

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
   * @param inputs digests of the files it was made from, by path
   */
  record Sound(CheckedPlan plan, SortedMap<String, String> inputs) implements SavedPlan {}

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
    Verdict verdict = PlanCheck.check(saved.plan());
    return verdict instanceof Verdict.Sound sound
        ? new Sound(sound.plan(), saved.inputs())
        : new Broken(((Verdict.Broken) verdict).faults());
  }
}

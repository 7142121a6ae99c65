package lapwright.check;

import java.util.List;
import java.util.Objects;

/** What the check says of a plan. */
public sealed interface Verdict {
  /** Every rule holds and every stated bound was recomputed. */
  record Sound(CheckedPlan plan) implements Verdict {
    public Sound {
      Objects.requireNonNull(plan);
    }
  }

  /**
   * The plan must not be used.
   *
   * @param faults all that were found, at least one
   */
  record Broken(List<PlanFault> faults) implements Verdict {
    public Broken {
      faults = List.copyOf(faults);
      if (faults.isEmpty()) {
        throw new IllegalArgumentException("broken without a fault");
      }
    }
  }
}

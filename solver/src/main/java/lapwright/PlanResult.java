package lapwright;

import java.util.List;
import java.util.Objects;
import lapwright.check.CheckedPlan;

/** What planning comes to. */
public sealed interface PlanResult {
  /** A plan of every material that passed the check. */
  record Planned(CheckedPlan plan) implements PlanResult {
    public Planned {
      Objects.requireNonNull(plan);
    }
  }

  /**
   * Some material cannot be planned, so nothing is.
   *
   * @param shortages at least one; every material's that cannot be planned, in the order of the
   *     materials
   */
  record Impossible(List<Shortage> shortages) implements PlanResult {
    public Impossible {
      shortages = List.copyOf(shortages);
      if (shortages.isEmpty()) {
        throw new IllegalArgumentException("impossible without a shortage");
      }
    }
  }

  /**
   * Stopped before every material had a plan.
   *
   * @param materials the ones without a plan
   */
  record Interrupted(List<String> materials) implements PlanResult {
    public Interrupted {
      materials = List.copyOf(materials);
    }
  }
}

package lapwright.check;

import java.util.List;

/** What the check of orders that were placed one after the other comes to. */
public sealed interface PlacedVerdict {
  /**
   * Every order keeps every rule, and takes only what the ones before it left.
   *
   * @param plans in the order in which they were placed, at least one
   */
  record Sound(List<CheckedPlan> plans) implements PlacedVerdict {
    public Sound {
      plans = List.copyOf(plans);
      if (plans.isEmpty()) {
        throw new IllegalArgumentException("no order");
      }
    }
  }

  /**
   * The orders must not be used.
   *
   * @param faults all that were found, at least one
   */
  record Broken(List<PlanFault> faults) implements PlacedVerdict {
    public Broken {
      faults = List.copyOf(faults);
      if (faults.isEmpty()) {
        throw new IllegalArgumentException("broken without a fault");
      }
    }
  }
}

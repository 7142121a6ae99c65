package lapwright.files.saved;

import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.compare.Saving;
import lapwright.files.source.Fault;
import lapwright.plan.OrderPlan;
import org.jspecify.annotations.Nullable;

/** What came of reading a saved plan. */
public sealed interface PlanReading {
  /**
   * A plan as it was saved; nobody has checked it yet.
   *
   * @param planId as the file says
   * @param orders in the order in which they were placed, at least one
   * @param inputs digests of the files it was made from, by path
   * @param saving what combining saved in the first; null when that was not asked
   */
  record Saved(
      String planId,
      List<OrderPlan> orders,
      SortedMap<String, String> inputs,
      @Nullable Saving saving)
      implements PlanReading {
    public Saved {
      Objects.requireNonNull(planId);
      orders = List.copyOf(orders);
      inputs = Collections.unmodifiableSortedMap(new TreeMap<>(inputs));
    }

    /** The first order. */
    public OrderPlan plan() {
      return orders.get(0);
    }
  }

  /** The file is damaged, or not a plan. */
  record Faulty(List<Fault> faults) implements PlanReading {
    public Faulty {
      faults = List.copyOf(faults);
      if (faults.isEmpty()) {
        throw new IllegalArgumentException("nothing is wrong");
      }
    }
  }
}

package lapwright.compare;

import java.util.Objects;
import lapwright.PlanResult;
import org.jspecify.annotations.Nullable;

/**
 * The plan of all jobs together and what combining saved.
 *
 * @param result the plan, or why there is none
 * @param saving null when there is no plan, or when what job by job would cost is not known
 */
public record CombinedResult(PlanResult result, @Nullable Saving saving) {
  public CombinedResult {
    Objects.requireNonNull(result);
    if (saving != null && !(result instanceof PlanResult.Planned)) {
      throw new IllegalArgumentException("a saving without a plan");
    }
  }
}

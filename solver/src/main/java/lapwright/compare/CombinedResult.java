package lapwright.compare;

import java.util.Objects;
import lapwright.PlanResult;
import org.jspecify.annotations.Nullable;

/**
 * The plan of all jobs together and what combining saved.
 *
 * @param result the plan, or why there is none
 * @param saving null exactly when there is no plan
 */
public record CombinedResult(PlanResult result, @Nullable Saving saving) {
  public CombinedResult {
    Objects.requireNonNull(result);
    if ((result instanceof PlanResult.Planned) != (saving != null)) {
      throw new IllegalArgumentException("a saving without a plan, or a plan without");
    }
  }
}

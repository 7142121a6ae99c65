package lapwright.lots;

import java.util.Objects;
import java.util.TreeMap;
import lapwright.plan.Certificate;

/**
 * A bound with its evidence.
 *
 * @param least {@link #NO_PLAN} where no plan exists
 */
record LotBound(long least, Certificate certificate) {
  static final long NO_PLAN = Long.MAX_VALUE;

  /** Where a bound is for the planner's own use. */
  static final Certificate UNSAID = new Certificate.RunWeights(1, new TreeMap<>(), 0);

  LotBound {
    Objects.requireNonNull(certificate);
  }
}

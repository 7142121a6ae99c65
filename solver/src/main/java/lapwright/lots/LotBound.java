package lapwright.lots;

import java.util.Objects;
import lapwright.plan.Certificate;

/**
 * A bound with its evidence.
 *
 * @param least {@link #NO_PLAN} where no plan exists
 */
record LotBound(long least, Certificate certificate) {
  static final long NO_PLAN = Long.MAX_VALUE;

  LotBound {
    Objects.requireNonNull(certificate);
  }
}

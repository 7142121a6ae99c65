package lapwright.lots;

import lapwright.shop.Need;
import lapwright.shop.RunNeed;

/**
 * What must come from one lot: a job, or a run.
 *
 * @param mark the run's mark; empty for a job
 */
record LotUnit(String job, String mark) {
  boolean holds(Need need) {
    return mark.isEmpty() && need.job().equals(job);
  }

  boolean holds(RunNeed need) {
    return need.job().equals(job) && (mark.isEmpty() || need.run().mark().equals(mark));
  }
}

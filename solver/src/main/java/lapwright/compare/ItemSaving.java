package lapwright.compare;

import java.util.List;
import java.util.Objects;

/**
 * One item: ordered for all jobs together against job by job, each rounded up to whole packs, what
 * is left over serving the next job. Both ways are exact.
 *
 * @param item name of the item
 * @param priced true when costs are in 1/10,000 of the currency, false when they are pieces
 * @param jobs that need it, in the order in which job by job they would be ordered
 * @param together cost for all jobs
 * @param jobByJob cost one job after the other; never less
 */
public record ItemSaving(
    String item, boolean priced, List<String> jobs, long together, long jobByJob) {
  public ItemSaving {
    Objects.requireNonNull(item);
    jobs = List.copyOf(jobs);
    if (jobByJob < together) {
      throw new IllegalArgumentException(
          item + ": together " + together + " costs more than " + jobByJob);
    }
  }

  public long saved() {
    return Math.subtractExact(jobByJob, together);
  }
}

package lapwright.compare;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * One material: ordered for all jobs together against ordered job by job.
 *
 * @param material id of the material
 * @param priced true when costs are in 1/10,000 of the currency, false when in units of length
 * @param jobs the jobs that need it, in the order in which job by job they would be ordered
 * @param together cost of the plan for all jobs
 * @param togetherCash the part of it that is spent now
 * @param togetherProved true when the bound of that plan equals its cost
 * @param jobByJob the other way; null when some job then has no plan
 * @param firstWithoutPlan the first job for which no plan was found from what the ones before it
 *     left; null when every job has one
 */
public record MaterialSaving(
    String material,
    boolean priced,
    List<String> jobs,
    long together,
    long togetherCash,
    boolean togetherProved,
    @Nullable JobByJob jobByJob,
    @Nullable String firstWithoutPlan) {
  public MaterialSaving {
    Objects.requireNonNull(material);
    jobs = List.copyOf(jobs);
    if ((jobByJob == null) == (firstWithoutPlan == null)) {
      throw new IllegalArgumentException(
          material + ": either every job has a plan or one has none");
    }
    if (jobByJob != null && jobByJob.cost() < together) {
      throw new IllegalArgumentException(
          material + ": together " + together + " costs more than " + jobByJob.cost());
    }
  }

  /**
   * Jobs planned one after the other, put together and priced once.
   *
   * @param cost what all of them cost
   * @param cash the part of it that is spent now
   * @param proved true when each job's plan is proved to be the cheapest from what the ones before
   *     it left
   */
  public record JobByJob(long cost, long cash, boolean proved) {}

  /** Cost saved, never negative; 0 when some job has no plan job by job. */
  public long saved() {
    return jobByJob == null ? 0 : Math.subtractExact(jobByJob.cost, together);
  }

  /** Cash saved now; may be negative. 0 when some job has no plan job by job. */
  public long cashSaved() {
    return jobByJob == null ? 0 : Math.subtractExact(jobByJob.cash, togetherCash);
  }
}

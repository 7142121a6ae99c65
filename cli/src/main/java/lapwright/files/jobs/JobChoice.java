package lapwright.files.jobs;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import lapwright.shop.JobStatus;

/**
 * Which of a folder's jobs a command is about.
 *
 * @param statuses jobs of another status are left out
 * @param names only these jobs; all when empty
 * @param also these jobs besides, whatever their status and the order say
 */
public record JobChoice(Set<JobStatus> statuses, List<String> names, List<String> also) {
  public JobChoice {
    statuses = Set.copyOf(statuses);
    names = List.copyOf(names);
    also = List.copyOf(also);
  }

  /** The jobs that are bought and cut. */
  public static JobChoice firm() {
    return new JobChoice(EnumSet.of(JobStatus.FIRM), List.of(), List.of());
  }

  public static JobChoice of(Set<JobStatus> statuses) {
    return new JobChoice(statuses, List.of(), List.of());
  }

  /** The same statuses, only these jobs. */
  public JobChoice only(List<String> jobs) {
    return new JobChoice(statuses, jobs, also);
  }

  /** The same jobs and these besides. */
  public JobChoice and(List<String> jobs) {
    return new JobChoice(statuses, names, jobs);
  }
}

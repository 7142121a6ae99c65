package lapwright;

import java.util.List;
import java.util.stream.Collectors;
import lapwright.check.PlanFault;

/** A plan did not pass the check: a defect of this program, never the user's mistake. */
public final class BrokenPlanException extends IllegalStateException {
  private static final long serialVersionUID = 1;

  private final transient List<PlanFault> faults;

  public BrokenPlanException(List<PlanFault> faults) {
    super(
        faults.stream()
            .map(PlanFault::message)
            .collect(Collectors.joining("\n  ", "the plan breaks its own rules:\n  ", "")));
    this.faults = List.copyOf(faults);
  }

  /** What is wrong with it. */
  public List<PlanFault> faults() {
    return faults;
  }
}

package lapwright.paperwork;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What the order's paper tells besides the plan itself.
 *
 * @param today the day of the paper, by which prices are out of date; null when that is not asked
 * @param leftOut jobs that are not in the plan
 * @param takenAsFirm jobs whose status nobody wrote, by name
 * @param notes found while reading, shown with what the plan itself calls for
 */
public record OrderFacts(
    @Nullable LocalDate today,
    List<LeftOut> leftOut,
    List<String> takenAsFirm,
    List<Attention> notes) {
  public static final OrderFacts NONE = new OrderFacts(null, List.of(), List.of(), List.of());

  public OrderFacts {
    leftOut = List.copyOf(leftOut);
    takenAsFirm = List.copyOf(takenAsFirm);
    notes = List.copyOf(notes);
  }

  /**
   * A job that is not in the plan.
   *
   * @param job name of the job
   * @param reason why
   */
  public record LeftOut(String job, Reason reason) {
    public LeftOut {
      Objects.requireNonNull(job);
      Objects.requireNonNull(reason);
    }
  }

  /** Why a job is not in the plan. */
  public enum Reason {
    BID,
    DONE,
    /** The order names it as left out. */
    HELD_BACK,
    /** It is due after the last day that the order takes. */
    DUE_LATER,
    /** Only other jobs were asked for. */
    NOT_ASKED_FOR
  }

  /**
   * Not an error, but somebody should look at it.
   *
   * @param what is the matter
   * @param advice what to do
   */
  public record Attention(String what, String advice) {
    public Attention {
      Objects.requireNonNull(what);
      Objects.requireNonNull(advice);
    }
  }
}

package lapwright.compare;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a plan was held against. Nothing of it decides the plan.
 *
 * @param saving against ordering job by job; null when that was not asked
 * @param alone plans with one supplier each; empty when that was not asked
 * @param costly marks that alone cost two sticks; empty when that was not asked
 * @param joints what choosing the joints of runs is worth, by material; empty when that was not
 *     asked
 */
public record Comparisons(
    @Nullable Saving saving,
    List<SupplierAlone> alone,
    List<CostlyMark> costly,
    List<JointChoice.Answer> joints) {
  public static final Comparisons NONE = new Comparisons(null, List.of(), List.of(), List.of());

  public Comparisons {
    alone = List.copyOf(alone);
    costly = List.copyOf(costly);
    joints = List.copyOf(joints);
  }

  /** Only what combining saved. */
  public static Comparisons of(@Nullable Saving saving) {
    return new Comparisons(saving, List.of(), List.of(), List.of());
  }
}

package lapwright.splice;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import lapwright.effort.Effort;
import lapwright.effort.Questions;
import lapwright.problem.SpliceProblem;
import lapwright.problem.SpliceSolution;
import lapwright.problem.SpliceSolution.Split;
import lapwright.problem.StickProblem;
import lapwright.problem.StickSolution;
import lapwright.problem.StickSolution.Status;
import org.jspecify.annotations.Nullable;

/** The best splits so far and how they are cut; cuts what is offered. */
final class Incumbent {
  private static final int QUESTIONS = 400;
  private static final int QUESTIONS_IN_EARNEST = 2_000;

  private final SpliceProblem raw;
  private final Merged merged;
  private final Effort effort;
  private final Set<Tried> tried = new HashSet<>();
  private @Nullable FixedSplits splits;
  private @Nullable StickSolution cutting;

  /** What is left to cut once splits are chosen. */
  private record Tried(StickProblem cutting, Map<Integer, Integer> wholes) {}

  Incumbent(SpliceProblem raw, Merged merged, Effort effort) {
    this.raw = raw;
    this.merged = merged;
    this.effort = effort;
  }

  boolean isFound() {
    return cutting != null;
  }

  /** In the raw problem's unit; {@link Long#MAX_VALUE} while nothing is found. */
  long cost() {
    return cutting == null ? Long.MAX_VALUE : cutting.cost();
  }

  /** The splits, by group; empty while nothing is found. */
  List<List<Split>> splits() {
    return splits == null ? List.of() : splits.splits();
  }

  /** Cuts the pieces of splits, as far as they can beat the best; true when they do. */
  boolean offer(List<List<Split>> offered) {
    FixedSplits fixed = FixedSplits.of(raw, offered);
    if (fixed == null || !tried.add(new Tried(fixed.problem(), fixed.wholes()))) {
      return false;
    }
    long half = effort.remainingNanos() / 2;
    StickSolution drafted =
        fixed.draft(
            cost(),
            effort
                .alsoStoppedBy(() -> effort.remainingNanos() < half)
                .alsoStoppedBy(new Questions(QUESTIONS))
                .tellingInstead(progress -> {}));
    if (!drafted.status().hasSolution() || (cutting != null && drafted.cost() >= cutting.cost())) {
      return false;
    }
    cutting = drafted;
    splits = fixed;
    return true;
  }

  /** The best splits, cut as well as they can be. */
  void cutInEarnest() {
    if (cutting == null || splits == null || cutting.cost() == cutting.bound()) {
      return;
    }
    long half = effort.remainingNanos() / 4 * 3;
    cutting =
        splits.solve(
            cutting,
            effort
                .alsoStoppedBy(() -> effort.remainingNanos() < half)
                .alsoStoppedBy(new Questions(QUESTIONS_IN_EARNEST))
                .tellingInstead(progress -> {}));
  }

  /** How the sticks are cut, in stocks of the merged problem; empty while nothing is found. */
  List<ClassMaster.Cutting> cuttings() {
    List<ClassMaster.Cutting> cuttings = new ArrayList<>();
    if (cutting != null && splits != null) {
      for (StickSolution.PatternUse use : cutting.patterns()) {
        List<Long> lengths = new ArrayList<>();
        for (StickSolution.Count count : use.counts()) {
          lengths.addAll(Collections.nCopies(count.count(), splits.pieces().get(count.item())));
        }
        cuttings.add(new ClassMaster.Cutting(merged.number(use.stock()), lengths));
      }
    }
    return cuttings;
  }

  /** As a solution of the raw problem, as neat as it gets. */
  SpliceSolution solution(Status status, long bound, BestBound proof) {
    FixedSplits chosen = Objects.requireNonNull(splits);
    StickSolution neat = chosen.polished(Objects.requireNonNull(cutting));
    return new SpliceSolution(
        status,
        chosen.splits(),
        chosen.pieces(),
        neat,
        neat.cost(),
        bound,
        merged.expand(proof.certificate()));
  }
}

package lapwright.splice;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.LongPredicate;
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

  /** The best splits cannot be cut for less; 0 while nothing is found. */
  long boundOfCutting() {
    return cutting == null ? 0 : cutting.bound();
  }

  /** The splits, by group; empty while nothing is found. */
  List<List<Split>> splits() {
    return splits == null ? List.of() : splits.splits();
  }

  /**
   * Cuts the pieces of splits, as far as they can beat the best; in earnest where they might cost
   * no more than anything must. True when they beat it.
   *
   * @param target no solution costs less
   */
  boolean offer(List<List<Split>> offered, long target) {
    FixedSplits fixed = FixedSplits.of(raw, offered);
    if (fixed == null || !tried.add(new Tried(fixed.problem(), fixed.wholes()))) {
      return false;
    }
    StickSolution cut = fixed.draft(cost(), some(2, QUESTIONS));
    if (cut.status().hasSolution()
        && cut.bound() <= target
        && target < Math.min(cut.cost(), cost())) {
      cut = fixed.solve(cut, some(4, QUESTIONS_IN_EARNEST));
    }
    if (!cut.status().hasSolution() || cut.cost() >= cost()) {
      return false;
    }
    cutting = cut;
    splits = fixed;
    return true;
  }

  /**
   * Takes sticks back and cuts them anew; true when that led to a better solution.
   *
   * @param coolings see {@link Recut}
   * @param enough whether a cost of the merged problem is as low as it can be
   */
  boolean recut(int coolings, LongPredicate enough, Effort within) {
    if (splits == null || cutting == null || !Recut.isFor(merged.problem())) {
      return false;
    }
    List<ClassMaster.Cutting> sticks = new ArrayList<>();
    for (StickSolution.PatternUse use : cutting.patterns()) {
      sticks.addAll(Collections.nCopies(use.times(), inMergedStocks(use)));
    }
    Recut.Found found =
        Recut.from(merged.problem(), splits.splits(), sticks, coolings, enough, within);
    FixedSplits fixed = found == null ? null : FixedSplits.of(raw, found.splits());
    if (found == null || fixed == null) {
      return false;
    }
    StickSolution cut = fixed.cut(merged.own(raw, found.sticks()));
    if (cut.cost() >= cost()) {
      return false;
    }
    cutting = cut;
    splits = fixed;
    return true;
  }

  /** A part of the effort that is left, for so many questions at most. */
  private Effort some(int part, int questions) {
    return effort
        .share(part)
        .alsoStoppedBy(new Questions(questions))
        .tellingInstead(progress -> {});
  }

  /** The best splits, cut as well as they can be. */
  void cutInEarnest() {
    if (cutting == null || splits == null || cutting.cost() == cutting.bound()) {
      return;
    }
    cutting = splits.solve(cutting, some(4, QUESTIONS_IN_EARNEST));
  }

  /** How the sticks are cut, in stocks of the merged problem; empty while nothing is found. */
  List<ClassMaster.Cutting> cuttings() {
    return cutting == null
        ? List.of()
        : cutting.patterns().stream().map(this::inMergedStocks).toList();
  }

  private ClassMaster.Cutting inMergedStocks(StickSolution.PatternUse use) {
    List<Long> lengths = new ArrayList<>();
    for (StickSolution.Count count : use.counts()) {
      long length = Objects.requireNonNull(splits).pieces().get(count.item());
      lengths.addAll(Collections.nCopies(count.count(), length));
    }
    return new ClassMaster.Cutting(merged.number(use.stock()), lengths);
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

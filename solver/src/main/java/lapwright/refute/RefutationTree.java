package lapwright.refute;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import lapwright.colgen.Pattern;
import lapwright.effort.Effort;
import lapwright.problem.Refutation;
import org.jspecify.annotations.Nullable;

/**
 * Shows by a tree that no choice from a list of patterns gives all items, or finds one. In each
 * node: the linear program, cuts by rounding, a sieve where it drops enough; then a decision
 * whether two items share a stick (D. Ryan and B. Foster, 1981), chosen by what both sides gain.
 * Every leaf is closed in integers only.
 */
final class RefutationTree implements AutoCloseable {
  private static final double WHOLE = 1e-6;
  private static final int CUTS_A_ROUND = 20;
  private static final int ROUNDS_AT_ROOT = 12;
  private static final int ROUNDS_BELOW = 2;
  private static final int MOST_ROWS = 250;
  private static final int CANDIDATES = 6;
  private static final int GREATEST_DEPTH = 200;

  private final Question question;
  private final List<Pattern> patterns;
  private final ListProgram program;
  private final SieveMaker sieves;
  private final CutFinder finder;
  private final Effort effort;
  private final int mostPrograms;
  private int programs;
  private @Nullable List<Pattern> solution;

  /**
   * @param mostPrograms linear programs after which to give up
   */
  RefutationTree(Question question, List<Pattern> patterns, int mostPrograms, Effort effort) {
    this.question = question;
    this.patterns = patterns;
    this.mostPrograms = mostPrograms;
    this.effort = effort;
    program = new ListProgram(question, patterns);
    sieves = new SieveMaker(question, patterns);
    finder = new CutFinder(question);
  }

  /** The refutation of what the list holds; null when there is a solution, or at a limit. */
  @Nullable Refutation run() {
    boolean[] listed = new boolean[patterns.size()];
    Arrays.fill(listed, true);
    return refute(List.of(), listed);
  }

  /** The patterns of a solution, one a stick; null when none was met. */
  @Nullable List<Pattern> solution() {
    return solution;
  }

  private @Nullable Refutation refute(List<Decision> decided, boolean[] before) {
    if (decided.size() > GREATEST_DEPTH) {
      return null;
    }
    boolean[] listed = before;
    List<SieveMaker.Made> made = new ArrayList<>();
    ListProgram.Solved solved = null;
    int rounds = decided.isEmpty() ? ROUNDS_AT_ROOT : ROUNDS_BELOW;
    for (int round = 0; ; round++) {
      boolean[] active = active(listed, decided);
      solved = solve(active, decided);
      if (solved == null) {
        return null;
      }
      SieveMaker.Made sieve = sieves.make(solved, program, decided, listed, active);
      boolean[] left = sieve.left;
      if (left == null) {
        made.add(sieve);
        return chain(made, null);
      }
      if (takeIfWhole(solved)) {
        return null;
      }
      int open = count(active);
      int rest = count(active(left, decided));
      if (rest * 20L <= open * 19L) {
        made.add(sieve);
        listed = left;
      }
      if (round >= rounds || program.rows() > MOST_ROWS) {
        break;
      }
      List<RoundingCut> cuts = cuts(solved);
      if (cuts.isEmpty()) {
        break;
      }
      cuts.forEach(program::add);
    }
    Decision holding = choose(solved, listed, decided);
    if (holding == null) {
      return null;
    }
    Decision atLeast = new Decision(holding.holding(), holding.times() + 1, false);
    Refutation more = refute(with(decided, atLeast), listed);
    if (more == null) {
      return null;
    }
    Refutation fewer = refute(with(decided, holding), listed);
    if (fewer == null) {
      return null;
    }
    return chain(
        made,
        new Refutation.HoldingSplit(
            holding.bySize(question), Math.toIntExact(holding.times()), fewer, more));
  }

  private ListProgram.@Nullable Solved solve(boolean[] active, List<Decision> decided) {
    if (programs >= mostPrograms || effort.spent()) {
      return null;
    }
    programs++;
    program.enter(active, decided);
    return program.solve(effort);
  }

  private static Refutation chain(List<SieveMaker.Made> sieves, @Nullable Refutation last) {
    Refutation chained = last;
    for (int at = sieves.size() - 1; at >= 0; at--) {
      chained = sieves.get(at).with(chained);
    }
    if (chained == null) {
      throw new IllegalStateException("neither a sieve nor a decision");
    }
    return chained;
  }

  private static List<Decision> with(List<Decision> decided, Decision next) {
    List<Decision> all = new ArrayList<>(decided);
    all.add(next);
    return all;
  }

  private boolean[] active(boolean[] listed, List<Decision> decided) {
    boolean[] active = listed.clone();
    for (int at = 0; at < active.length; at++) {
      for (int e = 0; e < decided.size() && active[at]; e++) {
        active[at] = !decided.get(e).forbids(patterns.get(at), question);
      }
    }
    return active;
  }

  private static int count(boolean[] set) {
    int count = 0;
    for (boolean member : set) {
      count += member ? 1 : 0;
    }
    return count;
  }

  private List<RoundingCut> cuts(ListProgram.Solved solved) {
    List<Pattern> used = new ArrayList<>();
    List<Double> values = new ArrayList<>();
    for (int at = 0; at < patterns.size(); at++) {
      if (solved.values()[at] > WHOLE) {
        used.add(patterns.get(at));
        values.add(solved.values()[at]);
      }
    }
    List<RoundingCut> cuts =
        new ArrayList<>(
            finder.violated(used, values.stream().mapToDouble(v -> v).toArray(), CUTS_A_ROUND));
    cuts.removeAll(program.cuts());
    return cuts;
  }

  private boolean takeIfWhole(ListProgram.Solved solved) {
    List<Pattern> taken = new ArrayList<>();
    for (int at = 0; at < patterns.size(); at++) {
      double value = solved.values()[at];
      long times = Math.round(value);
      if (Math.abs(value - times) > 1e-4) {
        return false;
      }
      for (long k = 0; k < times; k++) {
        taken.add(patterns.get(at));
      }
    }
    if (!question.isSolvedBy(taken)) {
      return false;
    }
    solution = taken;
    return true;
  }

  private record Candidate(Decision fewer, double part) {}

  /** The decision, as "at most", whose worse side gains most; null when there is none. */
  private @Nullable Decision choose(
      ListProgram.Solved solved, boolean[] listed, List<Decision> decided) {
    List<Candidate> candidates = pairs(solved);
    if (candidates.isEmpty()) {
      candidates = wholePatterns(solved);
    }
    if (candidates.size() == 1) {
      return candidates.get(0).fewer();
    }
    Decision best = null;
    double bestScore = -1;
    for (Candidate candidate : candidates) {
      Decision fewer = candidate.fewer();
      double up =
          gain(solved, new Decision(fewer.holding(), fewer.times() + 1, false), listed, decided);
      double down = up < 0 ? -1 : gain(solved, fewer, listed, decided);
      if (down < 0) {
        return best;
      }
      double score = Math.max(1e-7, up) * Math.max(1e-7, down);
      if (score > bestScore) {
        bestScore = score;
        best = fewer;
      }
    }
    return best;
  }

  /** How much nearer a side of a decision comes to being closed, at most all; -1 at a limit. */
  private double gain(
      ListProgram.Solved from, Decision side, boolean[] listed, List<Decision> decided) {
    List<Decision> all = with(decided, side);
    ListProgram.Solved solved = solve(active(listed, all), all);
    if (solved == null) {
      return -1;
    }
    double missing = Math.max(1e-6, 1 + 1e-6 - from.time());
    return Math.max(0, Math.min(1, (solved.time() - from.time()) / missing));
  }

  private List<Candidate> pairs(ListProgram.Solved solved) {
    Map<Long, Double> sums = new TreeMap<>();
    long m = question.items();
    for (int at = 0; at < patterns.size(); at++) {
      double value = solved.values()[at];
      if (value <= WHOLE) {
        continue;
      }
      Pattern pattern = patterns.get(at);
      for (int a = 0; a < pattern.kinds(); a++) {
        for (int b = pattern.count(a) > 1 ? a : a + 1; b < pattern.kinds(); b++) {
          sums.merge(pattern.item(a) * m + pattern.item(b), value, Double::sum);
        }
      }
    }
    List<Candidate> candidates = new ArrayList<>();
    sums.forEach(
        (key, sum) -> {
          double part = Math.abs(sum - Math.rint(sum));
          if (part > 1e-4) {
            int[] counts = new int[question.items()];
            counts[(int) (key / m)]++;
            counts[(int) (key % m)]++;
            candidates.add(
                new Candidate(
                    new Decision(Pattern.ofCounts(0, counts), (long) Math.floor(sum), true), part));
          }
        });
    return best(candidates);
  }

  /** Where every pair is whole: patterns, those with most pieces first. */
  private List<Candidate> wholePatterns(ListProgram.Solved solved) {
    List<Candidate> candidates = new ArrayList<>();
    for (int at = 0; at < patterns.size(); at++) {
      if (solved.values()[at] > 1e-4) {
        Decision holding = new Decision(patterns.get(at), 0, true);
        double sum = 0;
        for (int other = 0; other < patterns.size(); other++) {
          sum += holding.holds(patterns.get(other)) ? solved.values()[other] : 0;
        }
        double part = Math.abs(sum - Math.rint(sum));
        if (part > 1e-4) {
          candidates.add(
              new Candidate(new Decision(patterns.get(at), (long) Math.floor(sum), true), part));
        }
      }
    }
    return best(candidates);
  }

  private static List<Candidate> best(List<Candidate> candidates) {
    candidates.sort(Comparator.comparingDouble(Candidate::part).reversed());
    return candidates.subList(0, Math.min(CANDIDATES, candidates.size()));
  }

  @Override
  public void close() {
    program.close();
  }
}

package lapwright.refute;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import lapwright.colgen.Pattern;
import lapwright.effort.Effort;
import lapwright.problem.Refutation;
import org.jspecify.annotations.Nullable;

/**
 * Refutes a question by one set of weights with cuts by rounding, priced over all patterns of the
 * window, where these are too many to be listed: the linear program and cuts that its solution
 * violates in turn, until it says that the sticks do not suffice.
 *
 * <p>Pricing under cuts is hard in the number of their items (M. Jepsen and others, Operations
 * Research 56, 2008), so that cuts of long items come first: few combinations of those fit a stick.
 */
final class CutLoop {
  private static final int CUTS_A_ROUND = 5;
  private static final int MOST_FOUND = 20_000;
  private static final int MOST_COMBINATIONS = 10_000;
  private static final int MOST_SHARED = 2;

  private final Question question;
  private final WindowProgram program;
  private final Effort effort;

  CutLoop(Question question, WindowProgram program, Effort effort) {
    this.question = question;
    this.program = program;
    this.effort = effort;
  }

  /** The refutation; null when none is found. The program was solved before without cuts. */
  @Nullable Refutation run(int rounds) {
    List<RoundingCut> cuts = new ArrayList<>();
    for (int round = 0; round < rounds && !effort.spent(); round++) {
      CutItems items = more(cuts);
      if (items == null) {
        return null;
      }
      cuts = new ArrayList<>(items.cuts());
      program.cutBy(items);
      WindowProgram.Ending ending = program.run(effort);
      if (ending == null) {
        return null;
      }
      if (ending.refutes()) {
        return sieve(ending, cuts);
      }
    }
    return null;
  }

  /** Cuts in force and new ones; null when no new one is of use. */
  private @Nullable CutItems more(List<RoundingCut> before) {
    Map<Pattern, Double> values = program.values();
    List<RoundingCut> found =
        new ArrayList<>(
            new CutFinder(question)
                .violated(
                    List.copyOf(values.keySet()),
                    values.values().stream().mapToDouble(x -> x).toArray(),
                    MOST_FOUND));
    found.sort(Comparator.comparingInt(cut -> Collections.max(cut.items())));
    int[] shared = new int[question.items()];
    CutItems items = null;
    List<RoundingCut> cuts = new ArrayList<>(before);
    int added = 0;
    for (RoundingCut cut : found) {
      if (added >= CUTS_A_ROUND) {
        break;
      }
      if (cuts.contains(cut) || cut.items().stream().anyMatch(i -> shared[i] >= MOST_SHARED)) {
        continue;
      }
      List<RoundingCut> tried = new ArrayList<>(cuts);
      tried.add(cut);
      CutItems more = CutItems.of(question, tried, MOST_COMBINATIONS);
      if (more == null) {
        break;
      }
      items = more;
      cuts = tried;
      cut.items().forEach(i -> shared[i]++);
      added++;
    }
    return items;
  }

  private Refutation sieve(WindowProgram.Ending ending, List<RoundingCut> cuts) {
    List<Refutation.CutTimes> times = new ArrayList<>();
    for (int c = 0; c < cuts.size(); c++) {
      if (ending.cutTimes().get(c) > 0) {
        times.add(cuts.get(c).times(ending.cutTimes().get(c), question));
      }
    }
    return new Refutation.Sieve(question.bySize(ending.weights()), times, List.of(), null);
  }
}

package lapwright.bench.method;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import lapwright.effort.Effort;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import lapwright.problem.StickSolution.Count;
import lapwright.problem.StickSolution.PatternUse;

/**
 * What people do by hand: the longest piece first, each into the first stick with room; when none
 * has room, a new stick, of the stock that is cheapest by length.
 *
 * <p>Sticks that are alike are kept as one group, so that the time depends on the number of types,
 * not of pieces: O(types x groups). The bound is the length bound.
 */
final class FirstFit implements Method {
  @Override
  public String name() {
    return "first-fit";
  }

  @Override
  public String description() {
    return "by hand: the longest piece first, into the first stick with room";
  }

  @Override
  public Answer solve(StickProblem problem, Effort effort, int threads) {
    PlainProblem.require(problem);
    long bound = LengthBound.of(problem);
    Board board = new Board(problem);
    List<Integer> longestFirst =
        IntStream.range(0, problem.items().size())
            .boxed()
            .sorted(Comparator.comparing((Integer i) -> problem.items().get(i).size()).reversed())
            .toList();
    for (int item : longestFirst) {
      if (!board.place(item)) {
        return Answer.nothing(bound, "the sticks ran out");
      }
    }
    return board.answer(bound);
  }

  /** Sticks that hold the same pieces. */
  private record Group(int stock, Map<Integer, Integer> counts, long room, int sticks) {
    Group with(int item, int count, long size, int newSticks) {
      Map<Integer, Integer> more = new TreeMap<>(counts);
      if (count > 0) {
        more.merge(item, count, Integer::sum);
      }
      return new Group(stock, more, room - count * size, newSticks);
    }
  }

  /** The sticks in the order in which they were started. */
  private static final class Board {
    private final StickProblem problem;
    private final List<Integer> cheapestFirst;
    private final long[] left;
    private List<Group> groups = new ArrayList<>();

    Board(StickProblem problem) {
      this.problem = problem;
      List<Stock> stocks = problem.stocks();
      this.left = new long[stocks.size()];
      for (int j = 0; j < left.length; j++) {
        Stock stock = stocks.get(j);
        left[j] = stock.isLimited() ? (long) stock.mostPacks() * stock.packSize() : Long.MAX_VALUE;
      }
      cheapestFirst =
          IntStream.range(0, stocks.size())
              .boxed()
              .filter(j -> stocks.get(j).capacity() > 0)
              .sorted(
                  (a, b) -> {
                    Stock x = stocks.get(a);
                    Stock y = stocks.get(b);
                    int byPrice = Double.compare(pricePerLength(x), pricePerLength(y));
                    return byPrice != 0 ? byPrice : Long.compare(y.capacity(), x.capacity());
                  })
              .toList();
    }

    private static double pricePerLength(Stock stock) {
      return (double) stock.packCost() / ((double) stock.packSize() * stock.capacity());
    }

    boolean place(int index) {
      Item item = problem.items().get(index);
      int rest = item.demand();
      List<Group> after = new ArrayList<>();
      for (Group group : groups) {
        rest = fill(group, index, rest, after);
      }
      for (int stock : cheapestFirst) {
        long capacity = problem.stocks().get(stock).capacity();
        if (rest > 0 && left[stock] > 0 && capacity >= item.size()) {
          long each = capacity / item.size();
          int sticks = (int) Math.min(left[stock], (rest + each - 1) / each);
          left[stock] -= left[stock] == Long.MAX_VALUE ? 0 : sticks;
          rest = fill(new Group(stock, Map.of(), capacity, sticks), index, rest, after);
        }
      }
      groups = after;
      return rest == 0;
    }

    /** Fills the sticks of a group one after the other; returns how many pieces are left over. */
    private int fill(Group group, int index, int rest, List<Group> after) {
      long size = problem.items().get(index).size();
      int each = (int) Math.min(rest, group.room() / size);
      if (each == 0) {
        after.add(group);
        return rest;
      }
      int filled = Math.min(group.sticks(), rest / each);
      after.add(group.with(index, each, size, filled));
      int others = group.sticks() - filled;
      int last = others > 0 ? rest - filled * each : 0;
      if (last > 0) {
        after.add(group.with(index, last, size, 1));
        others--;
      }
      if (others > 0) {
        after.add(group.with(index, 0, size, others));
      }
      return rest - filled * each - last;
    }

    Answer answer(long bound) {
      List<PatternUse> patterns = new ArrayList<>();
      long[] sticks = new long[problem.stocks().size()];
      for (Group group : groups) {
        List<Count> counts = new ArrayList<>();
        group.counts().forEach((item, count) -> counts.add(new Count(item, count)));
        patterns.add(new PatternUse(group.stock(), counts, group.sticks()));
        sticks[group.stock()] += group.sticks();
      }
      return Answers.of(problem, patterns, sticks, bound, Answer.Outcome.PROVED);
    }
  }
}

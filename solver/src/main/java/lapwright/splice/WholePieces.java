package lapwright.splice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import lapwright.effort.Effort;
import lapwright.exact.StickSolver;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import lapwright.problem.StickSolution;
import lapwright.problem.StickSolution.Count;
import lapwright.problem.StickSolution.PatternUse;
import lapwright.problem.StickSolution.Status;
import org.jspecify.annotations.Nullable;

/**
 * Cutting stock in which some pieces must be whole sticks: alone on a stick of just their size.
 *
 * <p>A solution without that rule does where enough of its sticks happen to be so used, whosever
 * pieces they are. Otherwise sticks are set aside for the whole pieces, and what is left of the
 * stock, with what is left over of the packs, is cut for all others. Of stocks of the same size the
 * cheapest are set aside first, or those without a limit; the better of both is taken. The bound is
 * that without the rule, since the rule only makes solutions fewer.
 *
 * @param wholes by item, how many of its pieces must be whole sticks
 */
record WholePieces(StickProblem problem, Map<Integer, Integer> wholes) {
  private static final Comparator<Stock> CHEAPEST_FIRST =
      Comparator.comparingDouble(stock -> (double) stock.packCost() / stock.packSize());
  private static final Comparator<Stock> UNLIMITED_FIRST =
      Comparator.comparing(Stock::isLimited).thenComparing(CHEAPEST_FIRST);

  /** The solution itself where it keeps the rule, else the best that was found. */
  StickSolution keep(StickSolution free, Effort effort) {
    if (isKeptBy(free)) {
      return free;
    }
    StickSolution best = null;
    for (Comparator<Stock> first : List.of(CHEAPEST_FIRST, UNLIMITED_FIRST)) {
      StickSolution solution = new SetAside(first).solve(free, effort);
      if (solution != null && (best == null || solution.cost() < best.cost())) {
        best = solution;
      }
    }
    return best != null
        ? best
        : new StickSolution(Status.NOTHING_FOUND, List.of(), List.of(), -1, 0, null);
  }

  boolean isKeptBy(StickSolution solution) {
    for (Map.Entry<Integer, Integer> whole : wholes.entrySet()) {
      long size = problem.items().get(whole.getKey()).size();
      int found = 0;
      for (PatternUse use : solution.patterns()) {
        boolean one = use.counts().size() == 1 && use.counts().get(0).count() == 1;
        if (one
            && problem.items().get(use.counts().get(0).item()).size() == size
            && problem.stocks().get(use.stock()).capacity() == size) {
          found += use.times();
        }
      }
      if (found < whole.getValue()) {
        return false;
      }
    }
    return true;
  }

  /** One way to set sticks aside. */
  private final class SetAside {
    private final int[] packs = new int[problem.stocks().size()];
    private final int[] sticks = new int[packs.length];
    private final Map<PatternUse, Integer> uses = new LinkedHashMap<>();
    private final boolean suffices;

    SetAside(Comparator<Stock> first) {
      boolean enough = true;
      for (Map.Entry<Integer, Integer> whole : wholes.entrySet()) {
        enough &= take(whole.getKey(), whole.getValue(), first);
      }
      suffices = enough;
    }

    private boolean take(int item, int wanted, Comparator<Stock> first) {
      Item piece = problem.items().get(item);
      List<Integer> order = new ArrayList<>();
      for (int j = 0; j < packs.length; j++) {
        Stock stock = problem.stocks().get(j);
        boolean held = !piece.small() || stock.wholeUse() || piece.size() <= stock.smallCapacity();
        if (stock.capacity() == piece.size() && held) {
          order.add(j);
        }
      }
      order.sort(Comparator.comparing(problem.stocks()::get, first));
      int missing = wanted;
      for (int j : order) {
        Stock stock = problem.stocks().get(j);
        long most = (long) stock.mostPacks() * stock.packSize();
        int taken = (int) Math.min(missing, most);
        if (taken > 0) {
          sticks[j] = taken;
          packs[j] = (taken - 1) / stock.packSize() + 1;
          add(j, List.of(new Count(item, 1)), taken);
          missing -= taken;
        }
      }
      return missing == 0;
    }

    private void add(int stock, List<Count> counts, int times) {
      uses.merge(new PatternUse(stock, counts, 1), times, Math::addExact);
    }

    @Nullable StickSolution solve(StickSolution free, Effort effort) {
      if (!suffices) {
        return null;
      }
      List<Integer> itemOf = new ArrayList<>();
      List<Item> items = new ArrayList<>();
      for (int i = 0; i < problem.items().size(); i++) {
        Item item = problem.items().get(i);
        int left = item.demand() - wholes.getOrDefault(i, 0);
        if (left > 0) {
          itemOf.add(i);
          items.add(new Item(item.size(), left, item.small()));
        }
      }
      int[] inAll = packs.clone();
      if (!items.isEmpty() && !cutTheRest(items, itemOf, inAll, effort)) {
        return null;
      }
      long cost = 0;
      for (int j = 0; j < inAll.length; j++) {
        long packCost = problem.stocks().get(j).packCost();
        cost = Math.addExact(cost, Math.multiplyExact(packCost, (long) inAll[j]));
      }
      List<PatternUse> patterns = new ArrayList<>();
      uses.forEach((use, times) -> patterns.add(new PatternUse(use.stock(), use.counts(), times)));
      return new StickSolution(
          Status.OPEN,
          patterns,
          Arrays.stream(inAll).boxed().toList(),
          cost,
          Math.min(cost, free.bound()),
          Objects.requireNonNull(free.certificate()));
    }

    private boolean cutTheRest(List<Item> items, List<Integer> itemOf, int[] inAll, Effort effort) {
      List<Integer> stockOf = new ArrayList<>();
      List<Stock> stocks = new ArrayList<>();
      for (int j = 0; j < packs.length; j++) {
        Stock stock = problem.stocks().get(j);
        stockOf.add(j);
        stocks.add(
            of(
                stock,
                stock.packCost(),
                stock.packCash(),
                stock.packSize(),
                stock.isLimited() ? stock.mostPacks() - packs[j] : stock.mostPacks()));
      }
      for (int j = 0; j < packs.length; j++) {
        Stock stock = problem.stocks().get(j);
        int over = packs[j] * stock.packSize() - sticks[j];
        if (over > 0) {
          stockOf.add(j);
          stocks.add(of(stock, 0, 0, 1, over));
        }
      }
      StickSolution rest =
          StickSolver.solve(new StickProblem(items, stocks, problem.keepFrom()), List.of(), effort);
      if (!rest.status().hasSolution()) {
        return false;
      }
      for (PatternUse use : rest.patterns()) {
        List<Count> counts =
            use.counts().stream()
                .map(count -> new Count(itemOf.get(count.item()), count.count()))
                .toList();
        add(stockOf.get(use.stock()), counts, use.times());
      }
      for (int j = 0; j < packs.length; j++) {
        inAll[j] += rest.packs().get(j);
      }
      return true;
    }

    private static Stock of(Stock stock, long cost, long cash, int packSize, int most) {
      return new Stock(
          stock.length(),
          stock.capacity(),
          stock.smallCapacity(),
          stock.wholeUse(),
          stock.tail(),
          cost,
          cash,
          packSize,
          most);
    }
  }
}

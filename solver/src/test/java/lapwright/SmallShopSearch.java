package lapwright;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import lapwright.SmallShop.Line;
import lapwright.SmallShop.Piece;
import lapwright.SmallShop.Stick;

/**
 * The least cost of a tiny {@link SmallShop} by trying every choice of lots, every split of every
 * line and every way to put the pieces on sticks.
 */
final class SmallShopSearch {
  private final SmallShop shop;
  private final List<String> units;
  private final List<Single> singles = new ArrayList<>();

  /** A piece; where it may come from any lot it is a unit of its own. */
  private record Single(String unit, int length) {}

  /** What cutting just these pieces from a lot costs, the longest first. */
  private final Map<String, Map<List<Integer>, Long>> known = new HashMap<>();

  private SmallShopSearch(SmallShop shop) {
    this.shop = shop;
    Set<String> all = new TreeSet<>();
    shop.lines().forEach(line -> all.add(shop.unitOf(line)));
    for (Piece piece : shop.pieces()) {
      for (int i = 0; i < piece.qty(); i++) {
        String unit = shop.unitOf(piece);
        singles.add(new Single(unit.isEmpty() ? "piece " + singles.size() : unit, piece.length()));
      }
    }
    singles.forEach(single -> all.add(single.unit()));
    this.units = List.copyOf(all);
  }

  /** In dollars; {@link Long#MAX_VALUE} when there is no plan. */
  static long leastCost(SmallShop shop) {
    return new SmallShopSearch(shop).choose(0, new HashMap<>());
  }

  private long choose(int unit, Map<String, String> lotOf) {
    if (unit == units.size()) {
      long sum = 0;
      for (String lot : shop.lots()) {
        long cost = cost(lot, lotOf);
        if (cost == Long.MAX_VALUE) {
          return cost;
        }
        sum += cost;
      }
      return sum;
    }
    long least = Long.MAX_VALUE;
    for (String lot : shop.lots()) {
      lotOf.put(units.get(unit), lot);
      least = Math.min(least, choose(unit + 1, lotOf));
    }
    lotOf.remove(units.get(unit));
    return least;
  }

  private long cost(String lot, Map<String, String> lotOf) {
    List<Integer> pieces = new ArrayList<>();
    for (Single single : singles) {
      if (lot.equals(lotOf.get(single.unit()))) {
        pieces.add(single.length());
      }
    }
    Set<List<Integer>> demands = new HashSet<>(Set.of(sorted(pieces)));
    for (Line line : shop.lines()) {
      for (int i = 0; lot.equals(lotOf.get(shop.unitOf(line))) && i < line.qty(); i++) {
        Set<List<Integer>> more = new HashSet<>();
        for (List<Integer> demand : demands) {
          for (List<Integer> split : shop.splits(line)) {
            List<Integer> longer = new ArrayList<>(demand);
            longer.addAll(split);
            more.add(sorted(longer));
          }
        }
        demands = more;
      }
    }
    Map<List<Integer>, Long> ofLot = known.computeIfAbsent(lot, key -> new HashMap<>());
    long least = Long.MAX_VALUE;
    for (List<Integer> demand : demands) {
      least = Math.min(least, ofLot.computeIfAbsent(demand, key -> placed(lot, key)));
    }
    return least;
  }

  private static List<Integer> sorted(List<Integer> pieces) {
    return pieces.stream().sorted(Collections.reverseOrder()).toList();
  }

  private long placed(String lot, List<Integer> pieces) {
    long[] best = {Long.MAX_VALUE};
    place(lot, pieces, 0, new ArrayList<>(), new int[shop.sticks().size()], best);
    return best[0];
  }

  /** Puts the pieces on open sticks or new ones. */
  private void place(
      String lot, List<Integer> pieces, int next, List<Integer> rooms, int[] used, long[] best) {
    long cost = 0;
    for (int j = 0; j < used.length; j++) {
      Stick stick = shop.sticks().get(j);
      long packs = (used[j] + stick.packSize() - 1) / stick.packSize();
      cost += packs * stick.packSize() * stick.price();
    }
    if (cost >= best[0]) {
      return;
    }
    if (next == pieces.size()) {
      best[0] = cost;
      return;
    }
    int size = pieces.get(next) + shop.kerf();
    Set<Integer> tried = new HashSet<>();
    for (int r = 0; r < rooms.size(); r++) {
      int room = rooms.get(r);
      if (room >= size && tried.add(room)) {
        rooms.set(r, room - size);
        place(lot, pieces, next + 1, rooms, used, best);
        rooms.set(r, room);
      }
    }
    for (int j = 0; j < used.length; j++) {
      Stick stick = shop.sticks().get(j);
      long most = (long) stick.mostPacks() * stick.packSize();
      if (shop.isOf(stick, lot) && used[j] < most && stick.length() >= pieces.get(next)) {
        used[j]++;
        rooms.add(stick.length() + shop.kerf() - size);
        place(lot, pieces, next + 1, rooms, used, best);
        rooms.remove(rooms.size() - 1);
        used[j]--;
      }
    }
  }
}

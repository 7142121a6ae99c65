package lapwright;

import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import lapwright.SmallShop.Line;
import lapwright.SmallShop.Piece;
import lapwright.SmallShop.Stick;
import lapwright.mip.NativeSolver;

/**
 * The least cost of a {@link SmallShop} by OR-Tools' general-purpose solver CP-SAT, over a model
 * that lists everything: for each lot whether each unit (a job, a run) is cut from it, how many
 * lines are split in each permitted way, and how many sticks are cut to each pattern that leaves no
 * room for another piece. Pieces may be cut more often than needed.
 */
final class SmallShopModel {
  /** In CP-SAT's own measure of work, which is the same on every machine. */
  private static final double MOST_WORK = 3;

  private static final int MOST_STICKS = 60;

  private final SmallShop shop;
  private final boolean wholeSticksOnly;
  private final CpModel model = new CpModel();
  private final Map<String, IntVar> unitFromLot = new HashMap<>();
  private final TreeSet<Integer> lengths = new TreeSet<>();

  /**
   * @param bound no plan costs less
   * @param cost of the best plan that was found; {@link Long#MAX_VALUE} when there is none
   */
  record Answer(long bound, long cost) {
    boolean isExact() {
      return bound == cost;
    }
  }

  private SmallShopModel(SmallShop shop, boolean wholeSticksOnly) {
    this.shop = shop;
    this.wholeSticksOnly = wholeSticksOnly;
  }

  /** In dollars. */
  static Answer solve(SmallShop shop) {
    return new SmallShopModel(shop, false).solve();
  }

  /** The same where every line is whole sticks and one closing piece. */
  static Answer ofWholeSticks(SmallShop shop) {
    return new SmallShopModel(shop, true).solve();
  }

  private Answer solve() {
    NativeSolver.load();
    shop.lines().forEach(line -> shop.splits(line).forEach(lengths::addAll));
    shop.pieces().forEach(piece -> lengths.add(piece.length()));
    Map<String, Map<Integer, LinearExprBuilder>> rest = new TreeMap<>();
    for (String lot : shop.lots()) {
      Map<Integer, LinearExprBuilder> short1 = new TreeMap<>();
      lengths.forEach(length -> short1.put(length, LinearExpr.newBuilder()));
      rest.put(lot, short1);
    }
    for (Line line : shop.lines()) {
      split(line, rest);
    }
    for (Piece piece : shop.pieces()) {
      share(piece, rest);
    }
    LinearExprBuilder cost = LinearExpr.newBuilder();
    for (String lot : shop.lots()) {
      Map<Integer, LinearExprBuilder> short1 = rest.get(lot);
      for (Stick stick : shop.sticks()) {
        if (shop.isOf(stick, lot)) {
          cut(stick, short1, cost);
        }
      }
      short1.values().forEach(expression -> model.addLessOrEqual(expression, 0));
    }
    model.minimize(cost);
    CpSolver solver = new CpSolver();
    solver.getParameters().setNumWorkers(1).setRandomSeed(1).setMaxDeterministicTime(MOST_WORK);
    CpSolverStatus status = solver.solve(model);
    return switch (status) {
      case OPTIMAL -> {
        long optimum = Math.round(solver.objectiveValue());
        yield new Answer(optimum, optimum);
      }
      case FEASIBLE ->
          new Answer(
              (long) Math.ceil(solver.bestObjectiveBound() - 1e-6),
              Math.round(solver.objectiveValue()));
      case INFEASIBLE -> new Answer(Long.MAX_VALUE, Long.MAX_VALUE);
      default -> new Answer(0, Long.MAX_VALUE);
    };
  }

  private IntVar from(String unit, String lot) {
    return unitFromLot.computeIfAbsent(unit + " from " + lot, model::newBoolVar);
  }

  private void oneLot(String unit) {
    LinearExprBuilder sum = LinearExpr.newBuilder();
    shop.lots().forEach(lot -> sum.add(from(unit, lot)));
    model.addEquality(sum, 1);
  }

  /** Adds to what each lot must give the pieces of the line's splits. */
  private void split(Line line, Map<String, Map<Integer, LinearExprBuilder>> rest) {
    String unit = shop.unitOf(line);
    oneLot(unit);
    for (String lot : shop.lots()) {
      LinearExprBuilder lines = LinearExpr.newBuilder();
      lines.addTerm(from(unit, lot), -line.qty());
      for (List<Integer> split : shop.splits(line)) {
        if (!wholeSticksOnly || shop.isWholeButOne(split, lot)) {
          IntVar times = model.newIntVar(0, line.qty(), "");
          lines.add(times);
          split.forEach(length -> rest.get(lot).get(length).add(times));
        }
      }
      model.addEquality(lines, 0);
    }
  }

  private void share(Piece piece, Map<String, Map<Integer, LinearExprBuilder>> rest) {
    String unit = shop.unitOf(piece);
    LinearExprBuilder all = LinearExpr.newBuilder();
    for (String lot : shop.lots()) {
      if (unit.isEmpty()) {
        IntVar some = model.newIntVar(0, piece.qty(), "");
        all.add(some);
        rest.get(lot).get(piece.length()).add(some);
      } else {
        rest.get(lot).get(piece.length()).addTerm(from(unit, lot), piece.qty());
      }
    }
    if (unit.isEmpty()) {
      model.addEquality(all, piece.qty());
    } else {
      oneLot(unit);
    }
  }

  private void cut(Stick stick, Map<Integer, LinearExprBuilder> rest, LinearExprBuilder cost) {
    int most = Math.min(MOST_STICKS, stick.most());
    IntVar packs = model.newIntVar(0, most / stick.packSize(), "");
    cost.addTerm(packs, (long) stick.price() * stick.packSize());
    LinearExprBuilder used = LinearExpr.newBuilder();
    used.addTerm(packs, -stick.packSize());
    List<List<Integer>> patterns = new ArrayList<>();
    fill(stick.length() + shop.kerf(), lengths.last(), new ArrayList<>(), patterns);
    for (List<Integer> pattern : patterns) {
      IntVar times = model.newIntVar(0, most, "");
      used.add(times);
      pattern.forEach(length -> rest.get(length).addTerm(times, -1));
    }
    model.addLessOrEqual(used, 0);
  }

  /** Patterns that leave no room for the shortest piece, longest pieces first. */
  private void fill(int room, int longest, List<Integer> cuts, List<List<Integer>> patterns) {
    if (room < lengths.first() + shop.kerf()) {
      if (!cuts.isEmpty()) {
        patterns.add(List.copyOf(cuts));
      }
      return;
    }
    for (int length : lengths.headSet(longest, true).descendingSet()) {
      if (length + shop.kerf() <= room) {
        cuts.add(length);
        fill(room - length - shop.kerf(), length, cuts, patterns);
        cuts.remove(cuts.size() - 1);
      }
    }
  }
}

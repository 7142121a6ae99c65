package lapwright.compare;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import lapwright.measure.Length;
import lapwright.plan.Cut;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Pattern;
import lapwright.plan.RunLine;
import lapwright.shop.CutRules;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.RunNeed;

/**
 * What is still to be planned once orders are placed: only pieces that no ticket gives yet, from
 * what the placed orders left. What was bought stays bought, and tickets stay as they are.
 *
 * @param orders of the materials of which pieces are missing
 * @param missing the pieces that {@code orders} add
 * @param unneeded pieces, or lines of runs, that tickets give and that no job needs any more
 * @param newRuns runs, or lines of them, that {@code orders} add
 * @param changedRuns runs that are not as they were placed: their pieces are on tickets, so they
 *     are not planned
 */
public record LaterOrder(
    List<MaterialOrder> orders,
    List<PieceCount> missing,
    List<PieceCount> unneeded,
    List<RunNeed> newRuns,
    List<RunNeed> changedRuns) {
  public LaterOrder {
    orders = List.copyOf(orders);
    missing = List.copyOf(missing);
    unneeded = List.copyOf(unneeded);
    newRuns = List.copyOf(newRuns);
    changedRuns = List.copyOf(changedRuns);
  }

  /**
   * Pieces of one kind, over all copies of a job.
   *
   * @param material id of the material
   * @param job name of the job
   * @param mark empty when it has none
   * @param length finished length
   * @param placed how many the tickets of the placed orders give
   * @param now how many the jobs need
   */
  public record PieceCount(
      String material, String job, String mark, Length length, int placed, int now) {
    public PieceCount {
      Objects.requireNonNull(material);
      Objects.requireNonNull(job);
      Objects.requireNonNull(mark);
      Objects.requireNonNull(length);
    }
  }

  /** A piece as jobs tell it apart. */
  private record Piece(String job, int copy, String mark, Length length, CutRules rules) {}

  private record Kind(String job, String mark, Length length) {}

  /**
   * Compares what the jobs need with what the tickets give.
   *
   * @param placed in the order in which they were placed
   * @param now what the firm jobs need and what the shop has, stock as it was before all of them
   */
  public static LaterOrder of(List<OrderPlan> placed, List<MaterialOrder> now) {
    List<MaterialOrder> orders = new ArrayList<>();
    List<PieceCount> missing = new ArrayList<>();
    List<PieceCount> unneeded = new ArrayList<>();
    List<RunNeed> added = new ArrayList<>();
    List<RunNeed> changed = new ArrayList<>();
    Map<String, List<MaterialPlan>> plansOf = new LinkedHashMap<>();
    for (OrderPlan order : placed) {
      for (MaterialPlan plan : order.materials()) {
        plansOf.computeIfAbsent(plan.material(), id -> new ArrayList<>()).add(plan);
      }
    }
    for (MaterialOrder order : now) {
      String material = order.material().id();
      List<MaterialPlan> plans = plansOf.getOrDefault(material, List.of());
      plansOf.remove(material);
      Map<Piece, Integer> given = given(plans);
      count(material, given, order.needs(), missing, unneeded);
      List<Need> needs = missing(order.needs(), given);
      List<RunNeed> runs = new ArrayList<>();
      for (RunNeed run : order.runs()) {
        LaterRun later = LaterRun.of(run, runsLike(run, plans), SettledLines.of(run, plans));
        changed.addAll(later.isChanged() ? List.of(run) : List.of());
        runs.addAll(later.added());
        if (later.unneeded() > 0) {
          unneeded.add(
              new PieceCount(
                  material,
                  run.job(),
                  run.run().mark(),
                  run.run().length(),
                  later.placed(),
                  later.placed() - later.unneeded()));
        }
      }
      added.addAll(runs);
      countGone(plans, order.runs(), unneeded);
      if (!needs.isEmpty() || !runs.isEmpty()) {
        orders.add(
            new MaterialOrder(
                order.material(),
                order.saw(),
                order.onHandValued(),
                StockLeft.after(plans, order.supplies()).supplies(),
                needs,
                runs));
      }
    }
    plansOf.forEach(
        (material, plans) -> {
          count(material, given(plans), List.of(), missing, unneeded);
          countGone(plans, List.of(), unneeded);
        });
    return new LaterOrder(orders, missing, unneeded, added, changed);
  }

  /**
   * Materials whose sticks on hand are counted off already: nothing can be added to placed orders
   * from there, for it would be taken off twice.
   */
  public static List<String> countedOff(List<OrderPlan> placed, List<MaterialOrder> now) {
    List<String> materials = new ArrayList<>();
    for (MaterialOrder order : now) {
      List<MaterialPlan> plans =
          placed.stream()
              .flatMap(one -> one.materials().stream())
              .filter(plan -> plan.material().equals(order.material().id()))
              .toList();
      if (!plans.isEmpty() && StockLeft.isCountedOff(plans, order.supplies())) {
        materials.add(order.material().id());
      }
    }
    return materials;
  }

  /** The same with other orders of the materials. */
  public LaterOrder withOrders(List<MaterialOrder> others) {
    return new LaterOrder(others, missing, unneeded, newRuns, changedRuns);
  }

  /** The number of the last ticket of placed orders; names that are no numbers do not count. */
  public static int lastTicket(List<OrderPlan> placed) {
    int last = 0;
    for (OrderPlan order : placed) {
      for (MaterialPlan plan : order.materials()) {
        for (Pattern pattern : plan.patterns()) {
          if (pattern.ticket().matches("\\d{1,9}")) {
            last = Math.max(last, Integer.parseInt(pattern.ticket()));
          }
        }
      }
    }
    return last;
  }

  private static List<RunNeed> runsLike(RunNeed run, List<MaterialPlan> plans) {
    return plans.stream()
        .flatMap(plan -> plan.order().runs().stream())
        .filter(
            placed ->
                placed.job().equals(run.job()) && placed.run().mark().equals(run.run().mark()))
        .toList();
  }

  /** Lines of runs that no job lists any more. */
  private static void countGone(
      List<MaterialPlan> plans, List<RunNeed> now, List<PieceCount> unneeded) {
    for (MaterialPlan plan : plans) {
      for (RunNeed run : plan.order().runs()) {
        boolean there =
            now.stream()
                .anyMatch(
                    one ->
                        one.job().equals(run.job()) && one.run().mark().equals(run.run().mark()));
        if (!there) {
          unneeded.add(
              new PieceCount(
                  plan.material(),
                  run.job(),
                  run.run().mark(),
                  run.run().length(),
                  run.lines(),
                  0));
        }
      }
    }
  }

  /** Pieces on tickets; those of runs are no pieces that jobs list. */
  private static Map<Piece, Integer> given(List<MaterialPlan> plans) {
    Map<Piece, Integer> given = new LinkedHashMap<>();
    for (MaterialPlan plan : plans) {
      Set<Piece> ofRuns = new HashSet<>();
      for (RunLine line : plan.runs()) {
        for (RunLine.RunPiece piece : line.pieces()) {
          ofRuns.add(
              new Piece(
                  line.job(), line.copy(), line.pieceMark(piece), piece.length(), CutRules.PLAIN));
        }
      }
      for (Pattern pattern : plan.patterns()) {
        for (Cut cut : pattern.cuts()) {
          Piece piece = new Piece(cut.job(), cut.copy(), cut.mark(), cut.fullLength(), cut.rules());
          if (!ofRuns.contains(piece)) {
            given.merge(piece, Math.multiplyExact(cut.qty(), pattern.times()), Math::addExact);
          }
        }
      }
    }
    return given;
  }

  private static void count(
      String material,
      Map<Piece, Integer> given,
      List<Need> needs,
      List<PieceCount> missing,
      List<PieceCount> unneeded) {
    Map<Kind, int[]> counts = new LinkedHashMap<>();
    for (Need need : needs) {
      int[] count =
          counts.computeIfAbsent(
              new Kind(need.job(), need.mark(), need.length()), kind -> new int[2]);
      count[1] = Math.addExact(count[1], need.total());
    }
    given.forEach(
        (piece, qty) ->
            counts
                    .computeIfAbsent(
                        new Kind(piece.job(), piece.mark(), piece.length()), kind -> new int[2])[
                    0] +=
                qty);
    counts.forEach(
        (kind, count) -> {
          PieceCount pieces =
              new PieceCount(material, kind.job(), kind.mark(), kind.length(), count[0], count[1]);
          if (count[1] > count[0]) {
            missing.add(pieces);
          } else if (count[1] < count[0]) {
            unneeded.add(pieces);
          }
        });
  }

  /** What the needs ask beyond what is given, copies that lack the same pieces together. */
  private static List<Need> missing(List<Need> needs, Map<Piece, Integer> given) {
    Map<Piece, Integer> left = new HashMap<>(given);
    List<Need> missing = new ArrayList<>();
    for (Need need : needs) {
      Need open = null;
      for (int copy = need.firstCopy(); copy <= need.lastCopy(); copy++) {
        Piece piece = new Piece(need.job(), copy, need.mark(), need.length(), need.rules());
        int had = Math.min(need.qty(), left.getOrDefault(piece, 0));
        left.merge(piece, -had, Math::addExact);
        int qty = need.qty() - had;
        if (open != null && (qty != open.qty() || qty == 0)) {
          missing.add(open);
          open = null;
        }
        if (qty > 0) {
          int first = open == null ? copy : open.firstCopy();
          open =
              new Need(
                  need.job(),
                  need.due(),
                  copy - first + 1,
                  need.mark(),
                  need.length(),
                  qty,
                  need.purpose(),
                  need.rules(),
                  first);
        }
      }
      if (open != null) {
        missing.add(open);
      }
    }
    return missing;
  }
}

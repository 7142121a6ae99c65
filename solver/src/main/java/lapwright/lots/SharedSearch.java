package lapwright.lots;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import lapwright.demand.RunDemand;
import lapwright.effort.Effort;
import lapwright.measure.Length;
import lapwright.plan.Certificate;
import lapwright.problem.LotCertificate;
import lapwright.problem.LotProblem;
import lapwright.problem.LotProblem.Sharing;
import lapwright.problem.SpliceCertificate;
import lapwright.problem.SpliceProblem;
import lapwright.splice.LotSearch;
import org.jspecify.annotations.Nullable;

/**
 * The choice of lots by one program over all of them: which lot each unit is cut from, and how many
 * of the free pieces each lot gives. Lots from which no unit can be cut are one.
 */
final class SharedSearch {
  private static final int MOST_TRIED = 400;

  private final LotOrder order;
  private final LotSolutions solutions;
  private final BestChoice best;
  private final List<Set<String>> lots = new ArrayList<>();
  private final List<RunDemand> freeOfLot = new ArrayList<>();
  private final List<Length> lengths;
  private final Set<Sharing> tried = new HashSet<>();

  SharedSearch(LotOrder order, LotSolutions solutions, BestChoice best) {
    this.order = order;
    this.solutions = solutions;
    this.best = best;
    this.lengths = List.copyOf(order.free().counts().keySet());
    Set<String> forFreePieces = new TreeSet<>();
    for (String lot : order.lots()) {
      if (order.units().stream().anyMatch(unit -> canServe(unit, lot))) {
        lots.add(Set.of(lot));
      } else {
        forFreePieces.add(lot);
      }
    }
    if (!forFreePieces.isEmpty()) {
      lots.add(forFreePieces);
    }
    lots.forEach(some -> freeOfLot.add(order.freeAlone(some::contains)));
  }

  private boolean canServe(LotUnit unit, String lot) {
    return !solutions.isTooFew(new LotShare(lot, Set.of(unit)));
  }

  LotBound run(Effort effort) {
    LotSearch.Bound bound =
        LotSearch.run(
            problem(),
            new LotSearch.Finds() {
              @Override
              public long cost() {
                return best.cost();
              }

              @Override
              public void offer(Sharing sharing) {
                if (tried.add(sharing) && best.offer(shares(sharing))) {
                  improve(sharing, effort);
                }
              }

              @Override
              public long apart(Sharing sharing) {
                offer(sharing);
                return SharedSearch.this.apart(sharing);
              }
            },
            effort);
    return new LotBound(
        bound.least(),
        order.countsFurtherSticks() ? LotBound.UNSAID : certificate(bound.certificate()));
  }

  /** What the lots that stand alone cost at least, each by itself. */
  private long apart(Sharing sharing) {
    long sum = 0;
    for (LotShare share : standAlone(sharing)) {
      long least = solutions.bound(share, best.cost()).least();
      if (least == LotBound.NO_PLAN) {
        return least;
      }
      sum = Math.addExact(sum, least);
    }
    long known = best.cost();
    for (LotShare share : standAlone(sharing)) {
      if (sum < known) {
        long before = solutions.bound(share, known).least();
        sum += solutions.raised(share, before + known - sum) - before;
      }
    }
    return sum;
  }

  private List<LotShare> standAlone(Sharing sharing) {
    return shares(sharing).stream().filter(share -> share.lots().size() == 1).toList();
  }

  /** Single units and single lengths change their lot, as long as that helps. */
  private void improve(Sharing start, Effort effort) {
    Sharing sharing = start;
    while (sharing != null && !effort.spent()) {
      sharing = firstBetter(neighbours(sharing), effort);
    }
  }

  private @Nullable Sharing firstBetter(List<Sharing> others, Effort effort) {
    for (Sharing other : others) {
      if (effort.spent() || tried.size() >= MOST_TRIED) {
        return null;
      }
      if (tried.add(other) && best.offer(shares(other))) {
        return other;
      }
    }
    return null;
  }

  private List<Sharing> neighbours(Sharing sharing) {
    List<Sharing> neighbours = new ArrayList<>();
    for (int i = 0; i < lengths.size(); i++) {
      for (int from = 0; from < lots.size(); from++) {
        int there = sharing.free().get(from).get(i);
        for (int to = 0; to < lots.size(); to++) {
          if (to != from && there > 0) {
            neighbours.add(moved(sharing, i, from, to, 1));
            if (there > 1) {
              neighbours.add(moved(sharing, i, from, to, there));
            }
          }
        }
      }
    }
    for (int u = 0; u < order.units().size(); u++) {
      for (int to = 0; to < lots.size(); to++) {
        if (to != sharing.lotOf().get(u) && lots.get(to).size() == 1) {
          List<Integer> lotOf = new ArrayList<>(sharing.lotOf());
          lotOf.set(u, to);
          neighbours.add(new Sharing(lotOf, sharing.free()));
        }
      }
    }
    return neighbours;
  }

  private static Sharing moved(Sharing sharing, int item, int from, int to, int count) {
    List<List<Integer>> free = new ArrayList<>();
    sharing.free().forEach(ofLot -> free.add(new ArrayList<>(ofLot)));
    free.get(from).set(item, free.get(from).get(item) - count);
    free.get(to).set(item, free.get(to).get(item) + count);
    return new Sharing(sharing.lotOf(), free);
  }

  private LotProblem problem() {
    List<LotProblem.Unit> units = new ArrayList<>();
    for (LotUnit unit : order.units()) {
      List<Optional<SpliceProblem>> fromLot = new ArrayList<>();
      for (Set<String> some : lots) {
        String lot = some.iterator().next();
        fromLot.add(
            some.size() == 1 && canServe(unit, lot)
                ? Optional.of(order.problem(order.demand(new LotShare(lot, Set.of(unit))), some))
                : Optional.empty());
      }
      units.add(new LotProblem.Unit(fromLot));
    }
    List<SpliceProblem> ofLots = new ArrayList<>();
    for (int l = 0; l < lots.size(); l++) {
      ofLots.add(order.problem(freeOfLot.get(l), lots.get(l)));
    }
    return new LotProblem(ofLots, units);
  }

  private List<LotShare> shares(Sharing sharing) {
    List<LotShare> shares = new ArrayList<>();
    for (int l = 0; l < lots.size(); l++) {
      Set<LotUnit> units = new LinkedHashSet<>();
      for (int u = 0; u < order.units().size(); u++) {
        if (sharing.lotOf().get(u) == l) {
          units.add(order.units().get(u));
        }
      }
      SortedMap<Length, Integer> free = new TreeMap<>(Collections.reverseOrder());
      for (int i = 0; i < lengths.size(); i++) {
        if (sharing.free().get(l).get(i) > 0) {
          free.put(lengths.get(i), sharing.free().get(l).get(i));
        }
      }
      LotShare share = new LotShare(lots.get(l), units, free);
      if (!share.isEmpty()) {
        shares.add(share);
      }
    }
    return shares;
  }

  /** A certificate in the shop's words. */
  private Certificate certificate(LotCertificate certificate) {
    if (certificate instanceof LotCertificate.LotSplit split) {
      LotUnit unit = order.units().get(split.unit());
      return new Certificate.LotSplit(
          unit.job(),
          unit.mark(),
          List.copyOf(lots.get(split.lot())),
          certificate(split.within()),
          certificate(split.outside()));
    }
    if (certificate instanceof LotCertificate.PackSplit split) {
      return new Certificate.PackSplit(
          freeOfLot.get(split.lot()).keys(split.stocks()),
          split.packs(),
          certificate(split.fewer()),
          certificate(split.more()));
    }
    if (certificate instanceof LotCertificate.PieceSplit split) {
      return new Certificate.PieceSplit(
          lengths.get(split.item()),
          List.copyOf(lots.get(split.lot())),
          split.pieces(),
          certificate(split.fewer()),
          certificate(split.more()));
    }
    if (certificate instanceof LotCertificate.ByLot byLot) {
      SortedMap<String, Certificate> bounds = new TreeMap<>();
      for (LotShare share : standAlone(byLot.decided())) {
        bounds.put(share.lot(), solutions.bound(share, best.cost()).certificate());
      }
      return new Certificate.ByLot(bounds);
    }
    LotCertificate.Weights leaf = (LotCertificate.Weights) certificate;
    List<Certificate.LotWeights.OfLots> weights = new ArrayList<>();
    for (int l = 0; l < lots.size(); l++) {
      SpliceCertificate.Weights one = leaf.lots().get(l);
      SortedMap<Length, Long> byLength = new TreeMap<>();
      one.weights().forEach((length, weight) -> byLength.put(Length.ofUnits(length), weight));
      weights.add(
          new Certificate.LotWeights.OfLots(List.copyOf(lots.get(l)), byLength, one.perSize()));
    }
    return new Certificate.LotWeights(leaf.lots().get(0).scale(), weights);
  }
}

package lapwright.compare;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import lapwright.Planner;
import lapwright.demand.RunJoints;
import lapwright.effort.Effort;
import lapwright.layout.LayoutException;
import lapwright.measure.Length;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Proof;
import lapwright.shop.JointRules.JointCount;
import lapwright.shop.MaterialOrder;
import lapwright.shop.RunNeed;
import lapwright.shop.Shop;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/**
 * Which stock length, or which two together, if a mill cut them to order, would buy the least? Runs
 * are joined anew for each length, with no more joints a line than the lengths on offer ask for.
 * Rack and sticks on hand are left aside.
 *
 * <p>What is bought rises and falls with the length in many small steps. So lengths are tried
 * evenly first, then ever more closely around the best so far, then all others; only those are
 * planned whose bound leaves room for a plan that is cheaper by more than next to nothing ({@link
 * LengthSearch}). Of two lengths one is sought beside the best single one, then a better partner
 * for that.
 */
public final class BestLength {
  private static final int TRIED_EVENLY = 16;
  private static final int TRIED_CLOSELY = 8;
  private static final int MOST_LENGTHS = 500;
  private static final int SWEEPS = 2;

  /** A length that saves less than this part of the cost is not looked for. */
  private static final int PART_OF_ONE = 1_000;

  /** A second length is more trouble. */
  private static final int PART_OF_TWO = 200;

  private final Planner planner;
  private final Unanswered unanswered;

  /**
   * @param unanswered is told of lengths that a fault leaves out
   */
  public BestLength(Planner planner, Unanswered unanswered) {
    this.planner = Objects.requireNonNull(planner);
    this.unanswered = Objects.requireNonNull(unanswered);
  }

  /**
   * One length that was planned.
   *
   * @param cost in the unit of the material's plans, at the material's cheapest price per length
   * @param sticks how many are bought
   * @param proved true when no plan from that length costs less
   */
  public record Tried(Length length, long cost, int sticks, boolean proved) {}

  /**
   * One length from which no plan costs less than the best.
   *
   * @param atLeast what each costs at least, in the unit of the material's plans
   */
  public record RuledOut(Length length, long atLeast) {}

  /**
   * Two lengths together, each bought singly.
   *
   * @param cost in the unit of the material's plans, at the material's cheapest price per length
   * @param sticks how many are bought of both
   * @param proved true when no plan from these two lengths costs less
   */
  public record Two(Length shorter, Length longer, long cost, int sticks, boolean proved) {}

  /**
   * The answer for one material.
   *
   * @param order whose pieces and runs
   * @param now its plan from the lengths on offer, bought new; null when there is none
   * @param tried shortest first; empty when no length between the limits serves
   * @param ruledOut shortest first
   * @param isBest true when no other length between the limits, in the same steps, costs less than
   *     the best one but by next to nothing, a tenth of a percent
   * @param two the best two that were found; null when none cost less than the best single length
   * @param pairs how many pairs of lengths were planned or ruled out
   * @param pairsRuledOut how many of them were ruled out
   */
  public record Answer(
      MaterialOrder order,
      @Nullable MaterialPlan now,
      List<Tried> tried,
      List<RuledOut> ruledOut,
      boolean isBest,
      @Nullable Two two,
      int pairs,
      int pairsRuledOut) {
    public Answer {
      Objects.requireNonNull(order);
      tried = List.copyOf(tried);
      ruledOut = List.copyOf(ruledOut);
    }
  }

  /** Lengths from one up to another, in whole steps. */
  private record Steps(Length step, long first, long last) {
    static Steps of(Length from, Length to, Length step) {
      return new Steps(
          step,
          Math.floorDiv(from.units() + step.units() - 1, step.units()),
          Math.floorDiv(to.units(), step.units()));
    }

    /** Every so many steps, from one number of steps up to another. */
    List<Set<Length>> every(long apart, long from, long to) {
      List<Set<Length>> lengths = new ArrayList<>();
      for (long at = from; at <= to; at += apart) {
        if (at >= first && at <= last) {
          lengths.add(Set.of(step.times(at)));
        }
      }
      return lengths;
    }

    List<Set<Length>> evenly() {
      return every(apart(), first, last);
    }

    long apart() {
      return Math.max(1, (last - first) / TRIED_EVENLY);
    }

    /** All of them; so many at most, evenly. */
    List<Set<Length>> all() {
      return every(Math.max(1, (last - first) / MOST_LENGTHS), first, last);
    }

    boolean areFew() {
      return last - first <= MOST_LENGTHS;
    }
  }

  /**
   * Asks material by material; each gets its share of the effort.
   *
   * @param from shortest length
   * @param to longest length
   * @param step lengths are whole multiples of it
   */
  public List<Answer> ask(
      Shop shop, List<MaterialOrder> orders, Length from, Length to, Length step, Effort effort) {
    List<Answer> answers = new ArrayList<>();
    Steps steps = Steps.of(from, to, step);
    for (MaterialOrder order : orders) {
      Effort mine = effort.share(orders.size() - answers.size()).tellingInstead(progress -> {});
      answers.add(ask(shop, order, steps, mine));
    }
    return answers;
  }

  private Answer ask(Shop shop, MaterialOrder order, Steps steps, Effort effort) {
    MaterialPlan now =
        LengthSearch.plan(
            planner,
            unanswered,
            shop,
            order.withSupplies(
                order.supplies().stream().filter(Supply.Offer.class::isInstance).toList()),
            part(effort, 2));
    LengthSearch search =
        new LengthSearch(
            planner,
            unanswered,
            shop,
            atJointsOfToday(order),
            now == null ? Long.MAX_VALUE : now.cost());
    Effort forSingles = part(effort, 1);
    single(search, steps, forSingles);
    if (!search.planned().isEmpty()) {
      search.inEarnest(bestOf(search), part(effort, 2));
    }
    Map<Set<Length>, MaterialPlan> planned = new HashMap<>(search.planned());
    List<RuledOut> ruledOut = new ArrayList<>();
    for (Set<Length> lengths : search.ruledOut()) {
      ruledOut.add(new RuledOut(lengths.iterator().next(), search.atLeast(lengths)));
    }
    ruledOut.sort(Comparator.comparing(RuledOut::length));
    List<Tried> tried = new ArrayList<>();
    planned.forEach(
        (lengths, plan) ->
            tried.add(
                new Tried(lengths.iterator().next(), plan.cost(), sticks(plan), isProved(plan))));
    tried.sort(Comparator.comparing(Tried::length));
    if (tried.isEmpty()) {
      return new Answer(order, now, tried, ruledOut, false, null, 0, 0);
    }
    Length best = best(tried).length();
    long least = best(tried).cost();
    boolean isBest =
        steps.areFew()
            && steps.all().stream()
                .allMatch(
                    each -> each.contains(best) || search.cannotBeat(each, least, PART_OF_ONE));
    int singles = search.planned().size() + search.ruledOut().size();
    int singlesOut = search.ruledOut().size();
    Two two = two(search, steps, best, least, effort);
    return new Answer(
        order,
        now,
        tried,
        ruledOut,
        isBest,
        two,
        search.planned().size() + search.ruledOut().size() - singles,
        search.ruledOut().size() - singlesOut);
  }

  /** What the best single length costs. */
  private static void single(LengthSearch search, Steps steps, Effort effort) {
    long least = search.tryAll(steps.evenly(), Long.MAX_VALUE, PART_OF_ONE, effort);
    long apart = steps.apart();
    while (apart > 1 && !search.planned().isEmpty()) {
      long best = bestOf(search).iterator().next().units() / steps.step().units();
      long closer = Math.max(1, 2 * apart / TRIED_CLOSELY);
      least =
          search.tryAll(
              steps.every(closer, best - apart, best + apart), least, PART_OF_ONE, effort);
      apart = closer == apart ? 1 : closer;
    }
    search.tryAll(steps.all(), least, PART_OF_ONE, effort);
  }

  /** The cheapest two together that were found; null when none cost less than the best one. */
  private static @Nullable Two two(
      LengthSearch search, Steps steps, Length single, long least, Effort effort) {
    Length one = single;
    long best = least;
    for (int sweep = 0; sweep < SWEEPS; sweep++) {
      Effort mine = part(effort, SWEEPS - 1 - sweep);
      best = search.tryAll(with(one, steps.evenly()), best, PART_OF_TWO, mine);
      best = search.tryAll(with(one, steps.all()), best, PART_OF_TWO, mine);
      Set<Length> both = bestOf(search);
      if (both.size() == 1 || best == least) {
        return null;
      }
      Length kept = one;
      one = both.stream().filter(length -> !length.equals(kept)).findFirst().orElse(kept);
    }
    Set<Length> both = bestOf(search);
    search.inEarnest(both, effort);
    MaterialPlan plan = Objects.requireNonNull(search.planned().get(both));
    List<Length> sorted = both.stream().sorted().toList();
    return new Two(sorted.get(0), sorted.get(1), plan.cost(), sticks(plan), isProved(plan));
  }

  private static List<Set<Length>> with(Length one, List<Set<Length>> others) {
    return others.stream()
        .map(other -> other.iterator().next())
        .filter(other -> !other.equals(one))
        .map(other -> Set.of(one, other))
        .toList();
  }

  /** The lengths of the cheapest plan, the fewest and shortest of equals. */
  private static Set<Length> bestOf(LengthSearch search) {
    return search.planned().entrySet().stream()
        .min(
            Comparator.comparingLong(
                    (Map.Entry<Set<Length>, MaterialPlan> each) -> each.getValue().cost())
                .thenComparing(each -> each.getKey().size())
                .thenComparing(each -> Collections.min(each.getKey())))
        .orElseThrow()
        .getKey();
  }

  /** The cheapest of the lengths that were tried, the shortest of equals. */
  public static Tried best(List<Tried> tried) {
    return tried.stream().min(Comparator.comparingLong(Tried::cost)).orElseThrow();
  }

  /** A part of the effort that leaves as much for each of so many that follow. */
  private static Effort part(Effort effort, int following) {
    return effort.share(following + 1L);
  }

  private static int sticks(MaterialPlan plan) {
    return plan.purchases().stream().mapToInt(purchase -> purchase.packs()).sum();
  }

  private static boolean isProved(MaterialPlan plan) {
    return plan.proof() == Proof.PROVED;
  }

  /** The joints that the lengths on offer ask for are the most that any length may ask for. */
  private static MaterialOrder atJointsOfToday(MaterialOrder order) {
    List<RunNeed> runs = new ArrayList<>();
    for (RunNeed need : order.runs()) {
      int joints;
      try {
        joints = RunJoints.mostJoints(order, need);
      } catch (LayoutException e) {
        runs.add(need);
        continue;
      }
      runs.add(need.withRules(need.run().rules().with(new JointCount.AtMost(joints))));
    }
    return new MaterialOrder(
        order.material(), order.saw(), order.onHandValued(), order.supplies(), order.needs(), runs);
  }
}

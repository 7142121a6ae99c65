package lapwright.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.demand.RunDemand;
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
 * <p>Lengths are tried evenly first, then ever more closely around the best so far: what is bought
 * rises and falls with the length in many small steps, so the best of the lengths that were tried
 * need not be the best of all. Of two lengths one is sought beside the best single one, then a
 * better partner for that, among the even ones and those that were tried.
 */
public final class BestLength {
  private static final int TRIED_EVENLY = 16;
  private static final int TRIED_CLOSELY = 8;
  private static final int SWEEPS = 2;

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
   * One length that was tried.
   *
   * @param cost in the unit of the material's plans, at the material's cheapest price per length
   * @param sticks how many are bought
   * @param proved true when no plan from that length costs less
   */
  public record Tried(Length length, long cost, int sticks, boolean proved) {}

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
   * @param two the best two that were found; null when none cost less than the best single length
   */
  public record Answer(
      MaterialOrder order, @Nullable MaterialPlan now, List<Tried> tried, @Nullable Two two) {
    public Answer {
      Objects.requireNonNull(order);
      tried = List.copyOf(tried);
    }
  }

  /**
   * Asks material by material; each gets its share of the effort.
   *
   * @param step lengths are whole multiples of it
   */
  public List<Answer> ask(
      Shop shop, List<MaterialOrder> orders, Length from, Length to, Length step, Effort effort) {
    List<Answer> answers = new ArrayList<>();
    for (MaterialOrder order : orders) {
      long remaining = effort.remainingNanos();
      long end = remaining - remaining / (orders.size() - answers.size());
      Effort mine = effort.alsoStoppedBy(() -> effort.remainingNanos() < end);
      MaterialPlan now =
          plan(
              shop,
              order.withSupplies(
                  order.supplies().stream().filter(Supply.Offer.class::isInstance).toList()),
              share(mine, 2));
      List<Tried> tried = ask(shop, order, from, to, step, share(mine, 1));
      answers.add(
          new Answer(
              order,
              now,
              tried,
              tried.isEmpty() ? null : two(shop, order, tried, evenly(from, to, step), mine)));
    }
    return answers;
  }

  /**
   * The lengths that were tried, shortest first; empty when no length between the limits serves.
   *
   * @param from shortest length
   * @param to longest length
   * @param step lengths are whole multiples of it
   */
  public List<Tried> ask(
      Shop shop, MaterialOrder order, Length from, Length to, Length step, Effort effort) {
    MaterialOrder asked = atJointsOfToday(order);
    SortedMap<Length, Tried> tried = new TreeMap<>();
    long apart = apart(from, to, step);
    long first = first(from, step);
    long last = last(to, step);
    List<Long> next = new ArrayList<>();
    evenly(from, to, step).forEach(length -> next.add(length.units() / step.units()));
    while (!next.isEmpty() && !effort.spent()) {
      for (long at : next) {
        Length length = step.times(at);
        if (!tried.containsKey(length)) {
          Tried one = plan(shop, asked, length, share(effort, next.size()));
          if (one != null) {
            tried.put(length, one);
          }
        }
      }
      next.clear();
      if (apart > 1 && !tried.isEmpty()) {
        long best = best(tried).length().units() / step.units();
        long closer = Math.max(1, 2 * apart / TRIED_CLOSELY);
        for (long at = best - apart; at <= best + apart; at += closer) {
          if (at >= first && at <= last) {
            next.add(at);
          }
        }
        apart = closer == apart ? 1 : closer;
      }
    }
    return List.copyOf(tried.values());
  }

  /**
   * The cheapest two together that were found; null when none cost less than the best one.
   *
   * @param tried lengths that serve alone
   * @param others further ones to try beside them
   */
  private @Nullable Two two(
      Shop shop, MaterialOrder order, List<Tried> tried, List<Length> others, Effort effort) {
    MaterialOrder asked = atJointsOfToday(order);
    TreeSet<Length> lengths = new TreeSet<>(others);
    tried.forEach(each -> lengths.add(each.length()));
    Set<Set<Length>> known = new HashSet<>();
    Length one = best(tried).length();
    Two best = null;
    for (int sweep = 0; sweep < SWEEPS; sweep++) {
      int left = lengths.size() * (SWEEPS - sweep);
      for (Length other : lengths) {
        left--;
        if (other.equals(one) || effort.spent() || !known.add(Set.of(one, other))) {
          continue;
        }
        Two both = plan(shop, asked, one, other, share(effort, left + 1));
        if (both != null && (best == null || both.cost() < best.cost())) {
          best = both;
        }
      }
      if (best == null) {
        return null;
      }
      one = one.equals(best.shorter()) ? best.longer() : best.shorter();
    }
    return best != null && best.cost() < best(tried).cost() ? best : null;
  }

  private static long first(Length from, Length step) {
    return Math.floorDiv(from.units() + step.units() - 1, step.units());
  }

  private static long last(Length to, Length step) {
    return Math.floorDiv(to.units(), step.units());
  }

  private static long apart(Length from, Length to, Length step) {
    return Math.max(1, (to.units() - from.units()) / step.units() / TRIED_EVENLY);
  }

  private static List<Length> evenly(Length from, Length to, Length step) {
    List<Length> lengths = new ArrayList<>();
    for (long at = first(from, step); at <= last(to, step); at += apart(from, to, step)) {
      lengths.add(step.times(at));
    }
    return lengths;
  }

  /** The cheapest of the lengths that were tried, the shortest of equals. */
  public static Tried best(List<Tried> tried) {
    return tried.stream().min(Comparator.comparingLong(Tried::cost)).orElseThrow();
  }

  private static Tried best(SortedMap<Length, Tried> tried) {
    return best(List.copyOf(tried.values()));
  }

  private static Effort share(Effort effort, int lengths) {
    long left = effort.remainingNanos();
    long each = left / (2L * Math.max(1, lengths));
    return effort.alsoStoppedBy(() -> effort.remainingNanos() < left - each);
  }

  private @Nullable Tried plan(Shop shop, MaterialOrder order, Length length, Effort effort) {
    MaterialPlan plan = plan(shop, order, List.of(length), effort);
    return plan == null ? null : new Tried(length, plan.cost(), sticks(plan), isProved(plan));
  }

  private @Nullable Two plan(
      Shop shop, MaterialOrder order, Length one, Length other, Effort effort) {
    Length shorter = one.isShorterThan(other) ? one : other;
    Length longer = shorter.equals(one) ? other : one;
    MaterialPlan plan = plan(shop, order, List.of(shorter, longer), effort);
    return plan == null
        ? null
        : new Two(shorter, longer, plan.cost(), sticks(plan), isProved(plan));
  }

  private @Nullable MaterialPlan plan(
      Shop shop, MaterialOrder order, List<Length> lengths, Effort effort) {
    return plan(shop, OtherLength.onlyIn(order, lengths), effort);
  }

  private @Nullable MaterialPlan plan(Shop shop, MaterialOrder order, Effort effort) {
    PlanResult result =
        unanswered.ask(
            "one of the lengths of " + order.material().id(),
            new PlanResult.Interrupted(List.of(order.material().id())),
            () ->
                planner.plan(
                    shop, List.of(order), Map.of(), effort.tellingInstead(progress -> {})));
    return result instanceof PlanResult.Planned planned
        ? planned.plan().plan().materials().get(0)
        : null;
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
        joints = RunDemand.mostJoints(order, need);
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

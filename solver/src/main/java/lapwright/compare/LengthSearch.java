package lapwright.compare;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.atomic.AtomicBoolean;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.effort.Effort;
import lapwright.measure.Length;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Proof;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Shop;
import org.jspecify.annotations.Nullable;

/**
 * Plans one material from stock lengths that somebody may order, those with the lowest bound first,
 * and leaves out what its bound says cannot cost less than the best so far. Not thread-safe.
 */
final class LengthSearch {
  /** A plan that takes longer is left as it is; the best is planned to its end. */
  private static final long MOST_NANOS = 1_000_000_000;

  /** Above a cost that is known bounds are not asked for: so far, by as much as half of it. */
  private static final int PART_ABOVE = 2;

  private final Planner planner;
  private final Unanswered unanswered;
  private final Shop shop;
  private final MaterialOrder order;
  private final Map<Set<Length>, Long> bounds = new java.util.HashMap<>();
  private final Set<Set<Length>> ruledOut = new HashSet<>();
  private final Map<Set<Length>, MaterialPlan> planned = new java.util.HashMap<>();
  private final Set<Set<Length>> asked = new HashSet<>();
  private long ceiling;

  /**
   * @param known what some plan of the material costs; {@link Long#MAX_VALUE} when none is known
   */
  LengthSearch(Planner planner, Unanswered unanswered, Shop shop, MaterialOrder order, long known) {
    this.planner = planner;
    this.unanswered = unanswered;
    this.shop = shop;
    this.order = order;
    this.ceiling = above(known);
  }

  /** Lengths that may be ordered, one or several, and what no plan from them costs less than. */
  private record Candidate(Set<Length> lengths, long atLeast) {}

  /**
   * Tries what was not tried yet.
   *
   * @param best what is to be beaten; {@link Long#MAX_VALUE} where nothing is known
   * @param part what saves less than this part of the best is not looked for
   * @return the least cost that was found; {@code best} when none is less
   */
  long tryAll(Collection<Set<Length>> lengths, long best, int part, Effort effort) {
    List<Candidate> candidates = new ArrayList<>();
    for (Set<Length> each : lengths) {
      if (!effort.spent() && asked.add(each)) {
        long atLeast = atLeast(each, effort);
        if (atLeast < Long.MAX_VALUE) {
          candidates.add(new Candidate(each, atLeast));
        }
      }
    }
    candidates.sort(
        Comparator.comparingLong(Candidate::atLeast)
            .thenComparing(candidate -> candidate.lengths().stream().min(Length::compareTo).get())
            .thenComparing(candidate -> candidate.lengths().stream().max(Length::compareTo).get()));
    long least = best;
    int left = candidates.size();
    for (Candidate candidate : candidates) {
      if (candidate.atLeast() >= less(least, part)) {
        ruledOut.add(candidate.lengths());
      } else if (effort.spent()) {
        asked.remove(candidate.lengths());
      } else {
        MaterialPlan plan =
            plan(candidate.lengths(), less(least, part), share(effort, left).atMost(MOST_NANOS));
        if (plan != null && plan.cost() < least) {
          least = plan.cost();
        }
      }
      left--;
    }
    return least;
  }

  private static long less(long cost, int part) {
    return cost == Long.MAX_VALUE ? cost : cost - cost / part;
  }

  /** Plans lengths to the end that are not proved. */
  void inEarnest(Set<Length> lengths, Effort effort) {
    MaterialPlan known = planned.get(lengths);
    if (known != null && known.proof() != Proof.PROVED) {
      MaterialPlan plan = plan(lengths, Long.MAX_VALUE, effort);
      if (plan == null || plan.cost() > known.cost()) {
        planned.put(lengths, known);
      }
    }
  }

  private long atLeast(Set<Length> lengths, Effort effort) {
    return ceiling == Long.MAX_VALUE
        ? 0
        : bounds.computeIfAbsent(
            lengths,
            each ->
                unanswered.ask(
                    "what one of the lengths of " + order.material().id() + " costs at least",
                    0L,
                    () ->
                        planner.atLeast(OtherLength.onlyIn(order, sorted(each)), ceiling, effort)));
  }

  /** Ends early where the bound shows that the plan cannot cost less than {@code best}. */
  private @Nullable MaterialPlan plan(Set<Length> lengths, long best, Effort effort) {
    AtomicBoolean lost = new AtomicBoolean();
    MaterialPlan plan =
        plan(
            planner,
            unanswered,
            shop,
            OtherLength.onlyIn(order, sorted(lengths)),
            effort
                .alsoStoppedBy(lost::get)
                .tellingInstead(progress -> lost.compareAndSet(false, progress.bound() >= best)));
    if (plan == null) {
      return null;
    }
    if (ceiling == Long.MAX_VALUE) {
      ceiling = above(plan.cost());
    }
    bounds.merge(lengths, plan.lowerBound(), Math::max);
    if (plan.lowerBound() >= best) {
      ruledOut.add(lengths);
    } else {
      planned.put(lengths, plan);
    }
    return plan;
  }

  static @Nullable MaterialPlan plan(
      Planner planner, Unanswered unanswered, Shop shop, MaterialOrder order, Effort effort) {
    PlanResult result =
        unanswered.ask(
            "one of the lengths of " + order.material().id(),
            new PlanResult.Interrupted(List.of(order.material().id())),
            () -> planner.plan(shop, List.of(order), Map.of(), effort));
    return result instanceof PlanResult.Planned made ? made.plan().plan().materials().get(0) : null;
  }

  private static long above(long cost) {
    return cost == Long.MAX_VALUE ? cost : Math.addExact(cost, cost / PART_ABOVE);
  }

  private static List<Length> sorted(Set<Length> lengths) {
    return lengths.stream().sorted().toList();
  }

  /** A part of the effort, for one of so many plans. */
  private static Effort share(Effort effort, int plans) {
    return effort.share(2L * Math.max(1, plans));
  }

  /** What was planned and not ruled out, by its lengths. */
  Map<Set<Length>, MaterialPlan> planned() {
    return planned;
  }

  /** What no plan from these lengths costs less than, as far as was asked. */
  long atLeast(Set<Length> lengths) {
    return bounds.getOrDefault(lengths, 0L);
  }

  /** Those that were left out, because no plan from them can cost less than the best. */
  Set<Set<Length>> ruledOut() {
    return ruledOut;
  }

  /** True when no plan from these lengths saves more than a part of {@code cost}. */
  boolean cannotBeat(Set<Length> lengths, long cost, int part) {
    return bounds.getOrDefault(lengths, 0L) >= less(cost, part);
  }
}

package lapwright.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.measure.Length;
import lapwright.measure.Price;
import lapwright.plan.Account;
import lapwright.plan.Certificate;
import lapwright.plan.Cut;
import lapwright.plan.Pattern;
import lapwright.plan.Purchase;
import lapwright.shop.Ends;
import lapwright.shop.Need;
import lapwright.shop.Saw;
import lapwright.shop.Supply;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.jspecify.annotations.Nullable;

/**
 * On tiny orders the cheapest plan is found by trying every way of putting pieces on sticks. That
 * plan must pass the check whatever certificate it carries: no weights and no decisions give a
 * bound above it.
 */
class BoundNeverExceedsOptimumTest {

  @Property(tries = 400, seed = "11")
  void whateverTheCertificate(@ForAll long seed) {
    Random random = new Random(seed);
    PlanDraft draft = order(random);
    Search search = new Search(draft);
    search.put(0);
    Assume.that(search.best != null);
    search.write();
    for (int i = 0; i < 5; i++) {
      draft.certificate = certificate(draft, groups(draft, random), random, 3);
      draft.lowerBound = 0;
      CheckedPlan checked = PlanCheckTest.sound(draft);
      long bound = checked.bounds().get(0).bound();
      assertTrue(bound <= draft.cost);
      draft.lowerBound = bound;
      PlanCheckTest.sound(draft);
      draft.lowerBound = bound + 1;
      assertTrue(PlanCheck.check(draft.build()) instanceof Verdict.Broken);
    }
  }

  private static PlanDraft order(Random random) {
    PlanDraft draft = new PlanDraft();
    int kerf = random.nextInt(3);
    int trim = random.nextBoolean() ? 0 : kerf + random.nextInt(3);
    int hold = random.nextInt(3) == 0 ? random.nextInt(9) : 0;
    draft.saw =
        new Saw(
            "saw",
            Length.ofMm(kerf),
            Length.ofMm(trim),
            Length.ofMm(hold),
            random.nextInt(4) == 0 ? Length.ofMm(24) : null);
    draft.millEndsGood = random.nextInt(3) == 0;
    draft.shortBy = Length.ofMm(random.nextInt(2));
    draft.keepFrom = Length.ofMm(random.nextInt(10));
    draft.onHandValued = random.nextInt(4) != 0;
    boolean priced = random.nextInt(4) != 0;
    int offers = 1 + random.nextInt(2);
    for (int i = 0; i < offers; i++) {
      Price price =
          priced ? new Price(BigDecimal.valueOf(3 + random.nextInt(8)), Price.Per.EACH) : null;
      int soldIn = 1 + random.nextInt(3);
      int most = random.nextBoolean() ? Integer.MAX_VALUE : random.nextInt(5);
      draft.supplies.add(
          new Supply.Offer(
              "s" + i, Length.ofMm(15 + random.nextInt(12)), price, soldIn, most, "", null, null));
    }
    if (random.nextBoolean()) {
      draft.supplies.add(
          new Supply.OnHand(Length.ofMm(12 + random.nextInt(12)), 1 + random.nextInt(2), "", ""));
    }
    for (int i = random.nextInt(3); i > 0; i--) {
      Ends ends = List.of(Ends.SAWN, Ends.ONE_MILL, Ends.MILL).get(random.nextInt(3));
      draft.supplies.add(PlanDraft.offcut("R" + i, Length.ofMm(5 + random.nextInt(9)), ends));
    }
    int pieces = 0;
    for (int mark = 0; pieces < 5 && mark < 3; mark++) {
      int qty = 1 + random.nextInt(Math.min(3, 5 - pieces));
      pieces += qty;
      Length length = Length.ofMm(2 + random.nextInt(13));
      draft.needs.add(new Need("job", null, 1, "M" + mark, length, qty, ""));
    }
    return draft;
  }

  /** Supplies, all in groups of one or two. */
  private static List<List<String>> groups(PlanDraft draft, Random random) {
    List<List<String>> groups = new ArrayList<>();
    List<String> open = new ArrayList<>();
    for (Supply supply : draft.supplies) {
      open.add(supply.key());
      if (random.nextInt(3) > 0) {
        groups.add(open);
        open = new ArrayList<>();
      }
    }
    if (!open.isEmpty()) {
      groups.add(open);
    }
    return groups;
  }

  private static Certificate certificate(
      PlanDraft draft, List<List<String>> groups, Random random, int depth) {
    if (depth > 0 && random.nextBoolean()) {
      return new Certificate.PackSplit(
          groups.get(random.nextInt(groups.size())),
          random.nextInt(3),
          certificate(draft, groups, random, depth - 1),
          certificate(draft, groups, random, depth - 1));
    }
    SortedMap<Length, Long> weights = new TreeMap<>();
    long scale = 1 + random.nextInt(5);
    for (Need need : draft.needs) {
      long weight =
          switch (random.nextInt(3)) {
            case 0 -> need.length().units();
            case 1 -> random.nextInt(60_000);
            default -> need.length().units() * random.nextInt(4) / 2;
          };
      weights.put(need.length(), weight);
    }
    return new Certificate.Weights(scale, weights);
  }

  /** Puts pieces on sticks one after the other in every way. */
  private static final class Search {
    private final PlanDraft draft;
    private final Costs costs;
    private final List<Need> pieces = new ArrayList<>();
    private final List<OpenStick> open = new ArrayList<>();
    private long bestCost = Long.MAX_VALUE;
    private @Nullable List<OpenStick> best;

    private record OpenStick(Supply supply, List<Need> pieces) {}

    Search(PlanDraft draft) {
      this.draft = draft;
      this.costs = new Costs(draft.material().order());
      for (Need need : draft.needs) {
        for (int i = 0; i < need.qty(); i++) {
          pieces.add(need);
        }
      }
    }

    void put(int next) {
      long cost = cost(open);
      if (cost >= bestCost) {
        return;
      }
      if (next == pieces.size()) {
        if (open.stream().allMatch(stick -> offcut(stick) >= 0)) {
          bestCost = cost;
          best = open.stream().map(s -> new OpenStick(s.supply, List.copyOf(s.pieces))).toList();
        }
        return;
      }
      for (OpenStick stick : List.copyOf(open)) {
        stick.pieces.add(pieces.get(next));
        put(next + 1);
        stick.pieces.remove(stick.pieces.size() - 1);
      }
      for (Supply supply : draft.supplies) {
        long used = open.stream().filter(stick -> stick.supply.equals(supply)).count();
        boolean tooLong =
            draft.saw.longestStick() != null
                && supply.length().units() > draft.saw.longestStick().units();
        if (used < supply.atMost() && !tooLong) {
          open.add(new OpenStick(supply, new ArrayList<>(List.of(pieces.get(next)))));
          put(next + 1);
          open.remove(open.size() - 1);
        }
      }
    }

    /** What a stick leaves; -1 when its pieces cannot be cut from it. */
    private long offcut(OpenStick stick) {
      boolean trims = !draft.millEndsGood && draft.saw.endTrim().units() > 0;
      Ends ends = stick.supply.ends();
      long length = stick.supply.length().units();
      if (!(stick.supply instanceof Supply.RackOffcut)) {
        length -= draft.shortBy.units();
      }
      long kerf = draft.saw.kerf().units();
      long longest = 0;
      long left = length;
      boolean cutOffFarEnd = trims && ends != Ends.SAWN;
      if (trims && ends == Ends.MILL) {
        left -= draft.saw.endTrim().units();
      }
      for (int i = 0; i < stick.pieces.size(); i++) {
        long piece = stick.pieces.get(i).length().units();
        longest = Math.max(longest, piece);
        if (left < piece) {
          return -1;
        }
        left -= piece;
        boolean last = i == stick.pieces.size() - 1;
        if (left < kerf && (!last || cutOffFarEnd)) {
          return -1;
        }
        left = Math.max(0, left - kerf);
      }
      boolean asItComes =
          stick.pieces.size() == 1
              && longest == length
              && !(trims && ends == Ends.MILL)
              && !(cutOffFarEnd && kerf > 0);
      boolean held = Math.max(left, longest) >= draft.saw.hold().units();
      return asItComes || held ? left : -1;
    }

    private long packs(Supply supply, List<OpenStick> sticks) {
      long used = sticks.stream().filter(stick -> stick.supply.equals(supply)).count();
      return supply instanceof Supply.Offer offer
          ? (used + offer.soldIn() - 1) / offer.soldIn()
          : used;
    }

    private long cost(List<OpenStick> sticks) {
      long cost = 0;
      for (Supply supply : draft.supplies) {
        long packs = packs(supply, sticks);
        if (supply instanceof Supply.Offer offer && packs > offer.atMostPacks()) {
          return Long.MAX_VALUE;
        }
        cost += costs.ofPack(supply) * packs;
      }
      return cost;
    }

    /** Writes the best plan into the draft. */
    void write() {
      draft.cost = bestCost;
      Length surplus = Length.ZERO;
      Length shortAllowance = Length.ZERO;
      for (Supply supply : draft.supplies) {
        if (supply instanceof Supply.Offer offer) {
          long packs = packs(offer, best);
          if (packs > 0) {
            draft.purchases.add(new Purchase(offer.key(), (int) packs));
            draft.cash += packs * costs.ofPack(offer);
            long used = best.stream().filter(stick -> stick.supply.equals(supply)).count();
            long bought = packs * offer.soldIn();
            surplus = surplus.plus(offer.length().minus(draft.shortBy).times(bought - used));
            shortAllowance = shortAllowance.plus(draft.shortBy.times(bought));
          }
        }
      }
      Length none = Length.ZERO;
      Account account =
          new Account(none, none, none, none, none, none, none, surplus, shortAllowance);
      for (int i = 0; i < best.size(); i++) {
        account = account.plus(ticket(i, best.get(i)));
      }
      draft.account = account;
    }

    private Account ticket(int number, OpenStick stick) {
      Length offcut = Length.ofUnits(offcut(stick));
      boolean kept = offcut.units() > 0 && !offcut.isShorterThan(draft.keepFrom);
      List<Cut> cuts = new ArrayList<>();
      Length finished = Length.ZERO;
      List<Need> shortestFirst = new ArrayList<>(stick.pieces);
      shortestFirst.sort((a, b) -> a.length().compareTo(b.length()));
      for (Need piece : shortestFirst) {
        cuts.add(PlanDraft.cut(piece.job(), piece.mark(), piece.length(), 1));
        finished = finished.plus(piece.length());
      }
      draft.patterns.add(
          new Pattern(
              "T" + number,
              stick.supply.key(),
              1,
              cuts,
              offcut,
              kept ? List.of("A" + number) : List.of()));
      boolean trimmed = !draft.millEndsGood && stick.supply.ends() == Ends.MILL;
      Length drawn =
          stick.supply instanceof Supply.RackOffcut
              ? stick.supply.length()
              : stick.supply.length().minus(draft.shortBy);
      Length trim = trimmed ? draft.saw.endTrim() : Length.ZERO;
      Length none = Length.ZERO;
      return new Account(
          drawn,
          finished,
          none,
          drawn.minus(finished).minus(trim).minus(offcut),
          trim,
          kept ? offcut : none,
          kept ? none : offcut,
          none,
          none);
    }
  }

  @Property(tries = 200, seed = "11")
  void tighterWeightsFoundByHandReachIt(@ForAll long seed) {
    // One kind of stick, one length: a piece is worth its share of a stick.
    Random random = new Random(seed);
    PlanDraft draft = new PlanDraft();
    draft.saw = new Saw("saw", Length.ZERO, Length.ZERO, Length.ZERO, null);
    Length piece = Length.ofMm(3 + random.nextInt(5));
    draft.supplies.add(PlanDraft.offer(Length.ofMm(20), "8.00"));
    draft.needs.add(PlanDraft.need("job", "M", piece, 1 + random.nextInt(5)));
    Search search = new Search(draft);
    search.put(0);
    search.write();
    long aStick = Math.min(20 / (piece.units() / Length.UNITS_PER_MM), draft.needs.get(0).qty());
    draft.certificate = PlanDraft.weights(aStick, piece, 80_000);
    assertEquals(draft.cost, PlanCheckTest.sound(draft).bounds().get(0).bound());
  }
}

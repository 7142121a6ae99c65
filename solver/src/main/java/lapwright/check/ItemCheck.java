package lapwright.check;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import lapwright.plan.ItemPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Purchase;
import lapwright.shop.ItemOrder;
import lapwright.shop.ItemStock;
import org.jspecify.annotations.Nullable;

/** Checks what is bought of one item, and that no whole packs that give as many cost less. */
final class ItemCheck {
  private static final long OUT_OF_REACH = -1;

  /** Far beyond what a shop buys; so that a damaged file cannot ask for endless work. */
  private static final long MOST_PIECES = 20_000_000;

  private final ItemPlan plan;
  private final Faults faults;

  private ItemCheck(ItemPlan plan, Faults faults) {
    this.plan = plan;
    this.faults = faults;
  }

  static void check(OrderPlan plan, List<PlanFault> found) {
    Set<String> named = new HashSet<>();
    for (ItemPlan item : plan.items()) {
      Faults faults = new Faults(item.item(), found);
      if (!named.add(item.item())) {
        faults.ofMaterial(Rule.ITEM, "one plan", "another");
      }
      try {
        new ItemCheck(item, faults).run();
      } catch (ArithmeticException tooLarge) {
        faults.ofMaterial(Rule.ITEM_COST, "counts and costs within 64 bits", "larger ones");
      }
    }
  }

  private void run() {
    long open = -(long) plan.order().leftOver();
    for (ItemOrder.Need need : plan.order().needs()) {
      open += (long) need.qty() * need.copies();
    }
    long needed = Math.max(0, open);
    long here = Math.min(needed, plan.order().stock().onHand());
    if (plan.fromOnHand() != here) {
      faults.ofMaterial(Rule.ITEM, here + " from on hand", plan.fromOnHand());
    }
    long toBuy = needed - here;
    if (needed > MOST_PIECES) {
      faults.ofMaterial(Rule.ITEM_PACKS, "at most " + MOST_PIECES + " pieces", needed);
      return;
    }
    long offered = 0;
    for (ItemStock.Offer offer : plan.order().stock().offers()) {
      offered = Math.addExact(offered, most(offer) * offer.soldIn());
    }
    long missing = Math.max(0, toBuy - offered);
    if (plan.missing() != missing) {
      faults.ofMaterial(Rule.ITEM_PACKS, missing + " missing", plan.missing());
    }
    long bought = 0;
    long cost = 0;
    Set<String> named = new HashSet<>();
    for (Purchase purchase : plan.purchases()) {
      ItemStock.Offer offer = offer(purchase.supply());
      if (offer == null || !named.add(purchase.supply())) {
        faults.ofMaterial(Rule.ITEM, "offers, each named once", purchase.supply());
        return;
      }
      if (offer.soldIn() > MOST_PIECES || purchase.packs() > most(offer)) {
        faults.ofMaterial(
            Rule.ITEM_PACKS, "at most " + most(offer) + " packs of " + offer.key(), purchase);
      }
      bought = Math.addExact(bought, (long) purchase.packs() * offer.soldIn());
      cost = Math.addExact(cost, Math.multiplyExact(price(offer), (long) purchase.packs()));
    }
    if (bought < toBuy - missing) {
      faults.ofMaterial(Rule.ITEM_PACKS, (toBuy - missing) + " bought", bought);
    }
    if (plan.cost() != cost) {
      faults.ofMaterial(Rule.ITEM_COST, cost, plan.cost());
    }
    long least = least(Math.min(toBuy - missing, MOST_PIECES));
    if (plan.cost() != least) {
      faults.ofMaterial(Rule.ITEM_COST, "the least cost of " + least, plan.cost());
    }
  }

  private ItemStock.@Nullable Offer offer(String key) {
    for (ItemStock.Offer offer : plan.order().stock().offers()) {
      if (offer.key().equals(key)) {
        return offer;
      }
    }
    return null;
  }

  private static long most(ItemStock.Offer offer) {
    return offer.atMostPieces() == Integer.MAX_VALUE
        ? Integer.MAX_VALUE
        : offer.atMostPieces() / offer.soldIn();
  }

  private static long price(ItemStock.Offer offer) {
    return offer.price() == null
        ? offer.soldIn()
        : offer.price().ofPieces(offer.soldIn()).tenThousandths();
  }

  /**
   * The least cost of {@code pieces} or more: what every exact number costs at least, up to one
   * that the largest pack goes beyond them.
   */
  private long least(long pieces) {
    int largest = 1;
    BigInteger unit = BigInteger.ZERO;
    for (ItemStock.Offer offer : plan.order().stock().offers()) {
      largest = (int) Math.min(MOST_PIECES, Math.max(largest, offer.soldIn()));
      unit = unit.gcd(BigInteger.valueOf(offer.soldIn()));
    }
    int step = Math.max(1, unit.intValueExact());
    int end = Math.toIntExact((pieces + largest) / step + 1);
    long[] exactly = new long[end + 1];
    Arrays.fill(exactly, 1, end + 1, OUT_OF_REACH);
    for (ItemStock.Offer offer : plan.order().stock().offers()) {
      int gives = offer.soldIn() / step;
      for (int bundle : bundles(Math.min(most(offer), end / gives))) {
        long price = Math.multiplyExact(price(offer), bundle);
        for (int n = end; n >= (long) bundle * gives; n--) {
          long before = exactly[n - bundle * gives];
          if (before != OUT_OF_REACH
              && (exactly[n] == OUT_OF_REACH || Math.addExact(before, price) < exactly[n])) {
            exactly[n] = Math.addExact(before, price);
          }
        }
      }
    }
    long least = OUT_OF_REACH;
    for (int n = 0; n <= end; n++) {
      if ((long) n * step >= pieces
          && exactly[n] != OUT_OF_REACH
          && (least == OUT_OF_REACH || exactly[n] < least)) {
        least = exactly[n];
      }
    }
    return least;
  }

  /** Numbers whose sums are all the numbers up to {@code packs}, and no other. */
  private static List<Integer> bundles(long packs) {
    List<Integer> bundles = new ArrayList<>();
    long left = packs;
    for (long bundle = 1; left > 0; bundle *= 2) {
      bundles.add(Math.toIntExact(Math.min(bundle, left)));
      left -= bundle;
    }
    return bundles;
  }
}

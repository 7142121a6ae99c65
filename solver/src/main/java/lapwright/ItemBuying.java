package lapwright;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapwright.measure.Money;
import lapwright.plan.ItemPlan;
import lapwright.plan.Purchase;
import lapwright.shop.ItemOrder;
import lapwright.shop.ItemStock;

/**
 * Buys one item at the least cost: min sum p_j y_j with sum k_j y_j &gt;= n, 0 &lt;= y_j &lt;= m_j,
 * y whole, where offer j sells packs of k_j pieces at p_j and n pieces are wanted.
 *
 * <p>Exact, by dynamic programming over the pieces that are still wanted, counted in the greatest
 * number that divides every pack size: O(n) an offer without a limit, O(n log m) one with. Equal
 * cost is decided by fewer packs, then by the supplier's name, then by the larger pack.
 */
public final class ItemBuying {
  private static final long NEVER = Long.MAX_VALUE;

  private final int wanted;
  private final long[] cost;
  private final int[] packs;
  private final List<Stage> stages = new ArrayList<>();

  /**
   * @param wanted in units of {@code unit} pieces
   */
  private ItemBuying(int wanted) {
    this.wanted = wanted;
    cost = new long[wanted + 1];
    packs = new int[wanted + 1];
    Arrays.fill(cost, 1, wanted + 1, NEVER);
  }

  /**
   * Packs of one offer that are bought together, or not at all; or, without a limit, again and
   * again.
   *
   * @param used for how many pieces still wanted they are bought (once more)
   */
  private record Stage(ItemStock.Offer offer, int bundle, long gives, boolean again, BitSet used) {}

  /** What is bought, and what nobody sells. */
  public static ItemPlan buy(ItemOrder order) {
    int wanted = order.wanted();
    int fromOnHand = Math.min(wanted, order.stock().onHand());
    int rest = wanted - fromOnHand;
    List<ItemStock.Offer> offers =
        order.stock().offers().stream()
            .filter(offer -> offer.atMostPacks() > 0)
            .sorted(
                Comparator.comparing(ItemStock.Offer::supplier)
                    .thenComparing(Comparator.comparing(ItemStock.Offer::soldIn).reversed()))
            .toList();
    long most = 0;
    for (ItemStock.Offer offer : offers) {
      most += (long) offer.atMostPacks() * offer.soldIn();
    }
    int bought = (int) Math.min(rest, most);
    int unit =
        offers.stream()
            .map(offer -> BigInteger.valueOf(offer.soldIn()))
            .reduce(BigInteger.ZERO, BigInteger::gcd)
            .max(BigInteger.ONE)
            .intValueExact();
    int units = bought / unit + (bought % unit == 0 ? 0 : 1);
    ItemBuying buying = new ItemBuying(units);
    offers.forEach(offer -> buying.consider(offer, unit));
    Map<String, Integer> packs = buying.packs();
    List<Purchase> purchases = new ArrayList<>();
    for (ItemStock.Offer offer : order.stock().offers()) {
      Integer count = packs.get(offer.key());
      if (count != null) {
        purchases.add(new Purchase(offer.key(), count));
      }
    }
    return new ItemPlan(order, fromOnHand, purchases, rest - bought, buying.cost[units]);
  }

  private void consider(ItemStock.Offer offer, int unit) {
    int gives = offer.soldIn() / unit;
    int enough = wanted / gives + (wanted % gives == 0 ? 0 : 1);
    if (offer.atMostPacks() >= enough) {
      add(new Stage(offer, 1, gives, true, new BitSet()));
      return;
    }
    int left = offer.atMostPacks();
    for (int bundle = 1; left > 0; bundle *= 2) {
      int now = Math.min(bundle, left);
      add(new Stage(offer, now, (long) now * gives, false, new BitSet()));
      left -= now;
    }
  }

  private void add(Stage stage) {
    long price = Math.multiplyExact(atOnce(stage.offer()), stage.bundle());
    for (int k = 1; k <= wanted; k++) {
      int n = stage.again() ? k : wanted + 1 - k;
      int before = (int) Math.max(0, n - stage.gives());
      if (cost[before] == NEVER) {
        continue;
      }
      long with = Math.addExact(cost[before], price);
      int packsWith = Math.addExact(packs[before], stage.bundle());
      if (with < cost[n] || (with == cost[n] && packsWith < packs[n])) {
        cost[n] = with;
        packs[n] = packsWith;
        stage.used().set(n);
      }
    }
    stages.add(stage);
  }

  /** Without prices every piece counts the same. */
  private static long atOnce(ItemStock.Offer offer) {
    Money price = offer.packPrice();
    return price == null ? offer.soldIn() : price.tenThousandths();
  }

  /** Packs by the key of the offer, followed back from the last stage to the first. */
  private Map<String, Integer> packs() {
    Map<String, Integer> packsOf = new LinkedHashMap<>();
    int n = wanted;
    for (int s = stages.size() - 1; s >= 0; s--) {
      Stage stage = stages.get(s);
      while (stage.used().get(n)) {
        packsOf.merge(stage.offer().key(), stage.bundle(), Math::addExact);
        n = (int) Math.max(0, n - stage.gives());
        if (!stage.again()) {
          break;
        }
      }
    }
    return packsOf;
  }
}

package lapwright.plan;

import java.util.List;
import java.util.Objects;
import lapwright.shop.ItemOrder;
import lapwright.shop.ItemStock;

/**
 * What is bought of one item. Pieces left over from orders before serve first, then those on hand,
 * both at no cost; the rest is bought in whole packs.
 *
 * @param order as planned
 * @param fromOnHand pieces taken from those on hand
 * @param purchases packs by the key of their offer, in the order of the offers
 * @param missing pieces that nobody sells, or that are beyond what can be had
 * @param cost of the purchases: in 1/10,000 of the currency where the item is priced, else pieces.
 *     It is also the lower bound: the check finds the least cost by itself
 */
public record ItemPlan(
    ItemOrder order, int fromOnHand, List<Purchase> purchases, int missing, long cost) {
  public ItemPlan {
    Objects.requireNonNull(order);
    purchases = List.copyOf(purchases);
    if (fromOnHand < 0 || missing < 0) {
      throw new IllegalArgumentException(
          order.item() + ": " + fromOnHand + " from on hand, " + missing + " missing");
    }
  }

  public String item() {
    return order.item();
  }

  public boolean isPriced() {
    return order.stock().isPriced();
  }

  /** Pieces in the packs that are bought. */
  public int bought() {
    int pieces = 0;
    for (Purchase purchase : purchases) {
      for (ItemStock.Offer offer : order.stock().offers()) {
        if (offer.key().equals(purchase.supply())) {
          pieces = Math.addExact(pieces, Math.multiplyExact(purchase.packs(), offer.soldIn()));
        }
      }
    }
    return pieces;
  }

  /**
   * Pieces that lie there when every job has what it needs; less than 0 by what is missing. The
   * next order starts from it.
   */
  public int leftOver() {
    int left = Math.addExact(Math.addExact(order.leftOver(), fromOnHand), bought());
    for (ItemOrder.Need need : order.needs()) {
      left = Math.subtractExact(left, need.total());
    }
    return left;
  }
}

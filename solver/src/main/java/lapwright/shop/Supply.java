package lapwright.shop;

import java.time.LocalDate;
import java.util.Objects;
import lapwright.measure.Length;
import lapwright.measure.Price;
import org.jspecify.annotations.Nullable;

/**
 * Stock of one length that sticks may be drawn from. The origins are open: more will come.
 *
 * <p>The {@link #key} names a supply within its material, in the words that plans, certificates and
 * saved files use; no two supplies of a material share one.
 */
public sealed interface Supply {
  /** Unique within the material; stable as long as the shop's data is. */
  String key();

  /** The stock length, or the measured length of an offcut. */
  Length length();

  Ends ends();

  /** Sticks that can be had; {@link Integer#MAX_VALUE} without a limit. */
  int atMost();

  /**
   * What tells its maker and lot apart from those of other supplies. What is bought of one supplier
   * is one lot; stock whose lot nobody wrote down is a lot of its own.
   */
  default String lotKey() {
    if (this instanceof Offer offer) {
      return "to-buy:" + offer.supplier();
    }
    if (this instanceof Bought bought) {
      return "bought:" + bought.supplier();
    }
    String lot = this instanceof OnHand onHand ? onHand.lot() : ((RackOffcut) this).lot();
    return lot.isEmpty() ? key() : isLotKey(lot) ? lot : "lot:" + lot;
  }

  /**
   * Sticks to be bought.
   *
   * @param supplier whom from; empty when the material names no supplier
   * @param length stock length
   * @param price null when the material has no prices
   * @param soldIn sticks a pack, 1 when sold singly
   * @param atMostSticks the most sticks in an order; {@link Integer#MAX_VALUE} without a limit
   * @param code the supplier's own code; empty when not given
   * @param quoted the day of the price; null when not given
   * @param goodUntil the last day on which the price holds; null when not given
   */
  record Offer(
      String supplier,
      Length length,
      @Nullable Price price,
      int soldIn,
      int atMostSticks,
      String code,
      @Nullable LocalDate quoted,
      @Nullable LocalDate goodUntil)
      implements Supply {
    public Offer {
      Objects.requireNonNull(supplier);
      Objects.requireNonNull(code);
      requirePositive(length);
      if (soldIn < 1) {
        throw new IllegalArgumentException("sold in packs of " + soldIn);
      }
      if (atMostSticks < 0) {
        throw new IllegalArgumentException("at most " + atMostSticks + " sticks");
      }
    }

    @Override
    public String key() {
      return "buy:" + supplier + ":" + length.units() + ":" + soldIn;
    }

    @Override
    public Ends ends() {
      return Ends.MILL;
    }

    @Override
    public int atMost() {
      return atMostSticks == Integer.MAX_VALUE ? atMostSticks : atMostPacks() * soldIn;
    }

    /** Whole packs that can be had; {@link Integer#MAX_VALUE} without a limit. */
    public int atMostPacks() {
      return atMostSticks == Integer.MAX_VALUE ? atMostSticks : atMostSticks / soldIn;
    }
  }

  /**
   * Whole sticks that were bought with an earlier order and that no ticket of it cuts. They are
   * paid for, so they cost nothing to use.
   *
   * @param supplier whom from; empty when the material names no supplier
   * @param length stock length
   * @param qty how many, at least 1
   */
  record Bought(String supplier, Length length, int qty) implements Supply {
    public Bought {
      Objects.requireNonNull(supplier);
      requirePositive(length);
      if (qty < 1) {
        throw new IllegalArgumentException(qty + " sticks bought before");
      }
    }

    @Override
    public String key() {
      return "bought:" + supplier + ":" + length.units();
    }

    @Override
    public Ends ends() {
      return Ends.MILL;
    }

    @Override
    public int atMost() {
      return qty;
    }
  }

  /**
   * Whole sticks that lie in the shop, as the mill sent them.
   *
   * @param length stock length
   * @param qty how many, at least 1
   * @param place where they lie; empty when not given
   * @param lot heat or lot; empty when not given
   */
  record OnHand(Length length, int qty, String place, String lot) implements Supply {
    public OnHand {
      Objects.requireNonNull(place);
      Objects.requireNonNull(lot);
      requirePositive(length);
      if (qty < 1) {
        throw new IllegalArgumentException(qty + " sticks on hand");
      }
    }

    @Override
    public String key() {
      return "on-hand:" + length.units() + ":" + place + ":" + lot;
    }

    @Override
    public Ends ends() {
      return Ends.MILL;
    }

    @Override
    public int atMost() {
      return qty;
    }
  }

  /**
   * One offcut of the rack, measured.
   *
   * @param id the name that is written on it
   * @param length measured length
   * @param place where it lies; empty when not given
   * @param lot heat or lot; empty when not given
   */
  record RackOffcut(String id, Length length, Ends ends, String place, String lot)
      implements Supply {
    public RackOffcut {
      Objects.requireNonNull(id);
      Objects.requireNonNull(ends);
      Objects.requireNonNull(place);
      Objects.requireNonNull(lot);
      requirePositive(length);
    }

    @Override
    public String key() {
      return "rack:" + id;
    }

    @Override
    public int atMost() {
      return 1;
    }
  }

  /**
   * The lot as people wrote it down; empty where they did not, also for what a purchase leaves,
   * which bears the key of its lot.
   */
  static String writtenLot(String lot) {
    return isLotKey(lot) ? "" : lot;
  }

  /** What a purchase leaves bears the key of its lot. */
  private static boolean isLotKey(String lot) {
    return lot.startsWith("bought:") || lot.startsWith("lot:") || lot.startsWith("on-hand:");
  }

  private static void requirePositive(Length length) {
    if (length.units() <= 0) {
      throw new IllegalArgumentException("stock length is not positive");
    }
  }
}

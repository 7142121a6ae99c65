package lapwright.shop;

import java.util.Objects;
import lapwright.measure.Length;
import lapwright.measure.Money;
import org.jspecify.annotations.Nullable;

/**
 * The terms of one supplier. Material prices decide a plan; these are told beside it.
 *
 * @param id the name that price sheets use
 * @param days working days from order to delivery; null when not given
 * @param orderBy time of day until which an order counts for that day, {@code HH:MM}; empty when
 *     not given
 * @param minimum the least amount of an order; null when not given
 * @param freight what delivery costs; null when not given
 * @param freeFrom the amount from which delivery is free; null when it never is
 * @param longest the longest stick that is delivered; null when any is
 * @param rounds where an invoice is rounded to cents
 */
public record Supplier(
    String id,
    @Nullable Integer days,
    String orderBy,
    @Nullable Money minimum,
    @Nullable Money freight,
    @Nullable Money freeFrom,
    @Nullable Length longest,
    Rounds rounds) {
  public Supplier {
    Objects.requireNonNull(id);
    Objects.requireNonNull(orderBy);
    Objects.requireNonNull(rounds);
    if (days != null && days < 0) {
      throw new IllegalArgumentException("supplier " + id + ": " + days + " days");
    }
  }

  /** A supplier of whom nothing but the name is known. */
  public static Supplier named(String id) {
    return new Supplier(id, null, "", null, null, null, null, Rounds.LINE);
  }

  /**
   * What the invoice says for one order line.
   *
   * @param soldAtOnce price of a stick, or of a pack where packs are sold
   * @param count sticks or packs
   */
  public Money billed(Money soldAtOnce, int count) {
    return rounds == Rounds.EACH
        ? soldAtOnce.toCent().times(count)
        : soldAtOnce.times(count).toCent();
  }

  /** Where an invoice is rounded to cents. */
  public enum Rounds {
    /** Once an order line. */
    LINE("line"),
    /** Each stick or pack, before it is multiplied. */
    EACH("each");

    private final String word;

    Rounds(String word) {
      this.word = word;
    }

    /** The word that files use. */
    public String word() {
      return word;
    }
  }
}

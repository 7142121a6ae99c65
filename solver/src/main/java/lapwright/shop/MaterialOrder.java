package lapwright.shop;

import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;

/**
 * All that planning one material rests on: what the jobs need of it, what it can be cut from, and
 * the machine that cuts it. A saved plan carries it, so that it can be checked without the folder.
 *
 * @param onHandValued false when sticks on hand cost nothing to use ({@code on-hand-value:
 *     nothing})
 * @param supplies offers first, then sticks on hand, then offcuts, each in the order of the files
 * @param needs by due day, then job, then as the job lists them
 * @param runs in the same order
 */
public record MaterialOrder(
    Material material,
    Saw saw,
    boolean onHandValued,
    List<Supply> supplies,
    List<Need> needs,
    List<RunNeed> runs) {
  public MaterialOrder {
    Objects.requireNonNull(material);
    Objects.requireNonNull(saw);
    supplies = List.copyOf(supplies);
    needs = List.copyOf(needs);
    runs = List.copyOf(runs);
    if (!material.saw().equals(saw.id())) {
      throw new IllegalArgumentException(
          "material " + material.id() + " is cut on " + material.saw() + ", not on " + saw.id());
    }
    Set<String> keys = new HashSet<>();
    boolean priced = false;
    boolean unpriced = false;
    for (Supply supply : supplies) {
      if (!keys.add(supply.key())) {
        throw new IllegalArgumentException("two supplies are called " + supply.key());
      }
      if (supply instanceof Supply.Offer offer) {
        priced |= offer.price() != null;
        unpriced |= offer.price() == null;
      }
    }
    if (priced && unpriced) {
      throw new IllegalArgumentException(
          "material "
              + material.id()
              + ": some prices are missing, money and length do not add up");
    }
  }

  /** An order without runs. */
  public MaterialOrder(
      Material material, Saw saw, boolean onHandValued, List<Supply> supplies, List<Need> needs) {
    this(material, saw, onHandValued, supplies, needs, List.of());
  }

  /** The same with other needs and without runs. */
  public MaterialOrder withPieces(List<Need> pieces) {
    return new MaterialOrder(material, saw, onHandValued, supplies, pieces, List.of());
  }

  /** True when offers have prices, so that cost is money; else a stick's length stands for it. */
  public boolean isPriced() {
    return supplies.stream()
        .anyMatch(supply -> supply instanceof Supply.Offer offer && offer.price() != null);
  }
}

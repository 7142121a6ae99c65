package lapwright.shop;

import java.util.ArrayList;
import java.util.Collection;
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
 * @param supplies offers first, then sticks bought before, sticks on hand, and offcuts, each in the
 *     order of the files
 * @param needs by due day, then job, then as the job lists them
 * @param runs in the same order
 * @param fromStockOnly true when nothing can be bought and cost is the length that is drawn, of
 *     sticks on hand and of offcuts; offers then only tell which lengths there would be
 */
public record MaterialOrder(
    Material material,
    Saw saw,
    boolean onHandValued,
    List<Supply> supplies,
    List<Need> needs,
    List<RunNeed> runs,
    boolean fromStockOnly) {
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
        if (fromStockOnly && (offer.price() != null || offer.atMost() != 0)) {
          throw new IllegalArgumentException(offer.key() + " can be bought");
        }
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

  /** An order that may buy. */
  public MaterialOrder(
      Material material,
      Saw saw,
      boolean onHandValued,
      List<Supply> supplies,
      List<Need> needs,
      List<RunNeed> runs) {
    this(material, saw, onHandValued, supplies, needs, runs, false);
  }

  /** An order without runs. */
  public MaterialOrder(
      Material material, Saw saw, boolean onHandValued, List<Supply> supplies, List<Need> needs) {
    this(material, saw, onHandValued, supplies, needs, List.of());
  }

  /** The same with other needs and without runs. */
  public MaterialOrder withPieces(List<Need> pieces) {
    return new MaterialOrder(
        material, saw, onHandValued, supplies, pieces, List.of(), fromStockOnly);
  }

  /** The same with other runs. */
  public MaterialOrder withRuns(List<RunNeed> others) {
    return new MaterialOrder(material, saw, onHandValued, supplies, needs, others, fromStockOnly);
  }

  /** The same from other supplies. */
  public MaterialOrder withSupplies(List<Supply> others) {
    return new MaterialOrder(material, saw, onHandValued, others, needs, runs, fromStockOnly);
  }

  /** The same with the offers of these suppliers only. */
  public MaterialOrder onlyFrom(Collection<String> suppliers) {
    return withSupplies(
        supplies.stream()
            .filter(
                supply ->
                    !(supply instanceof Supply.Offer offer) || suppliers.contains(offer.supplier()))
            .toList());
  }

  /** The same needs from sticks on hand and offcuts only, as little drawn as will do. */
  public MaterialOrder buyingNothing() {
    List<Supply> there = new ArrayList<>();
    for (Supply supply : supplies) {
      there.add(
          supply instanceof Supply.Offer offer
              ? new Supply.Offer(
                  offer.supplier(),
                  offer.length(),
                  null,
                  offer.soldIn(),
                  0,
                  offer.code(),
                  null,
                  null)
              : supply);
    }
    return new MaterialOrder(material, saw, onHandValued, there, needs, runs, true);
  }

  /** True when offers have prices, so that cost is money; else a stick's length stands for it. */
  public boolean isPriced() {
    return supplies.stream()
        .anyMatch(supply -> supply instanceof Supply.Offer offer && offer.price() != null);
  }
}

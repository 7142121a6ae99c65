package lapwright.compare;

import java.util.List;
import java.util.function.ToLongFunction;
import lapwright.measure.Length;
import lapwright.measure.Money;

/**
 * What ordering for all jobs together saves against ordering job by job: the jobs planned one after
 * the other by due day, then name, each from what the ones before left (rack, sticks on hand,
 * limits, surplus of packs, kept offcuts), put together and priced once as one plan. Surplus that
 * an earlier job paid for costs a later one nothing.
 *
 * @param materials one a planned material, in the order of the plan
 * @param items one a planned item, in the order of the plan
 */
public record Saving(List<MaterialSaving> materials, List<ItemSaving> items) {
  public Saving {
    materials = List.copyOf(materials);
    items = List.copyOf(items);
  }

  /** Without counted goods. */
  public Saving(List<MaterialSaving> materials) {
    this(materials, List.of());
  }

  /** True when some of it is money. */
  public boolean hasMoney() {
    return materials.stream().anyMatch(MaterialSaving::priced)
        || items.stream().anyMatch(ItemSaving::priced);
  }

  /** Materials for which some job has no plan after the jobs before it. */
  public List<MaterialSaving> withoutComparison() {
    return materials.stream().filter(material -> material.jobByJob() == null).toList();
  }

  /** True when both ways are proved to be the cheapest for every material. */
  public boolean proved() {
    return materials.stream()
        .allMatch(
            material ->
                material.togetherProved()
                    && material.jobByJob() != null
                    && material.jobByJob().proved());
  }

  /** Money saved over the priced materials and items that can be compared; never negative. */
  public Money cost() {
    return new Money(sum(true, MaterialSaving::saved)).plus(ofItems());
  }

  /** Cash saved over the priced materials and items that can be compared; may be negative. */
  public Money cash() {
    return new Money(sum(true, MaterialSaving::cashSaved)).plus(ofItems());
  }

  /** Items are bought, so what they save is cash. */
  private Money ofItems() {
    return items.stream()
        .filter(ItemSaving::priced)
        .map(item -> new Money(item.saved()))
        .reduce(Money.ZERO, Money::plus);
  }

  /** Length of stock saved over the materials without prices; never negative. */
  public Length length() {
    return Length.ofUnits(sum(false, MaterialSaving::saved));
  }

  private long sum(boolean priced, ToLongFunction<MaterialSaving> what) {
    long sum = 0;
    for (MaterialSaving material : materials) {
      if (material.priced() == priced) {
        sum = Math.addExact(sum, what.applyAsLong(material));
      }
    }
    return sum;
  }
}

package lapwright.plan;

import java.util.List;
import java.util.Objects;
import lapwright.shop.Shop;
import org.jspecify.annotations.Nullable;

/**
 * The plan of all jobs that are bought and cut together.
 *
 * @param shop as it was when planned
 * @param materials one plan a material, in the order of the shop's materials
 * @param items one plan an item, by its name
 * @param division of the cost over the jobs; null when that was not asked
 */
public record OrderPlan(
    Shop shop, List<MaterialPlan> materials, List<ItemPlan> items, @Nullable Division division) {
  public OrderPlan {
    Objects.requireNonNull(shop);
    materials = List.copyOf(materials);
    items = List.copyOf(items);
  }

  /** A plan without items whose cost is not divided. */
  public OrderPlan(Shop shop, List<MaterialPlan> materials) {
    this(shop, materials, List.of(), null);
  }

  /** The same with its cost divided. */
  public OrderPlan divided(Division parts) {
    return new OrderPlan(shop, materials, items, parts);
  }
}

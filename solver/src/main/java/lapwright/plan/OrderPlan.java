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
 * @param onlySuppliers the suppliers that were asked, where not all were; empty when all were
 */
public record OrderPlan(
    Shop shop,
    List<MaterialPlan> materials,
    List<ItemPlan> items,
    @Nullable Division division,
    List<String> onlySuppliers) {
  public OrderPlan {
    Objects.requireNonNull(shop);
    materials = List.copyOf(materials);
    items = List.copyOf(items);
    onlySuppliers = List.copyOf(onlySuppliers);
  }

  /** A plan without items whose cost is not divided. */
  public OrderPlan(Shop shop, List<MaterialPlan> materials) {
    this(shop, materials, List.of(), null);
  }

  /** A plan for which all suppliers were asked. */
  public OrderPlan(
      Shop shop, List<MaterialPlan> materials, List<ItemPlan> items, @Nullable Division division) {
    this(shop, materials, items, division, List.of());
  }

  /** The same with its cost divided. */
  public OrderPlan divided(Division parts) {
    return new OrderPlan(shop, materials, items, parts, onlySuppliers);
  }
}

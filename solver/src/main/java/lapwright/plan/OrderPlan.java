package lapwright.plan;

import java.util.List;
import java.util.Objects;
import lapwright.shop.Shop;

/**
 * The plan of all jobs that are bought and cut together.
 *
 * @param shop as it was when planned
 * @param materials one plan a material, in the order of the shop's materials
 */
public record OrderPlan(Shop shop, List<MaterialPlan> materials) {
  public OrderPlan {
    Objects.requireNonNull(shop);
    materials = List.copyOf(materials);
  }
}

package lapwright.cli;

import java.util.Collection;
import java.util.List;
import lapwright.files.OrderInput;
import lapwright.shop.ItemOrder;
import lapwright.shop.MaterialOrder;

/** What the jobs that a command is about need. */
record Wanted(List<MaterialOrder> materials, List<ItemOrder> items) {
  Wanted {
    materials = List.copyOf(materials);
    items = List.copyOf(items);
  }

  static Wanted of(OrderInput input) {
    return new Wanted(input.materialOrders(), input.itemOrders());
  }

  /** The same with the offers of these suppliers only. */
  Wanted onlyFrom(Collection<String> suppliers) {
    return new Wanted(
        materials.stream().map(order -> order.onlyFrom(suppliers)).toList(),
        items.stream().map(order -> order.onlyFrom(suppliers)).toList());
  }

  boolean isPriced() {
    return materials.stream().anyMatch(MaterialOrder::isPriced)
        || items.stream().anyMatch(order -> order.stock().isPriced());
  }
}

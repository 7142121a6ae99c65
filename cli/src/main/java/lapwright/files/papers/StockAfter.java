package lapwright.files.papers;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import lapwright.compare.LaterItems;
import lapwright.compare.StockLeft;
import lapwright.files.shop.OtherStock;
import lapwright.files.shop.ShopFields;
import lapwright.files.source.Table;
import lapwright.measure.LengthStyle;
import lapwright.plan.ItemPlan;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.shop.ItemStock;
import lapwright.shop.Material;
import lapwright.shop.ShopOrder;
import lapwright.shop.Supply;

/**
 * What lies in the shop once a plan is carried out, as the files that the next week starts with:
 * sticks on hand that were not used and surplus of packs, offcuts that were not used and offcuts
 * that were kept; and counted goods.
 */
public final class StockAfter {
  public static final String ON_HAND_FILE = "on-hand-after.csv";
  public static final String RACK_FILE = "rack-after.csv";

  private final ShopOrder order;
  private final OtherStock other;
  private final Map<String, List<MaterialPlan>> plans = new HashMap<>();
  private final Map<String, List<ItemPlan>> itemPlans = new HashMap<>();

  /**
   * @param order the shop as it is before
   * @param other stock that was not planned
   * @param placed plans of orders that were placed one after the other
   */
  public StockAfter(ShopOrder order, OtherStock other, List<OrderPlan> placed) {
    this.order = order;
    this.other = other;
    for (OrderPlan plan : placed) {
      for (MaterialPlan material : plan.materials()) {
        plans.computeIfAbsent(material.material(), id -> new ArrayList<>()).add(material);
      }
      for (ItemPlan item : plan.items()) {
        itemPlans.computeIfAbsent(item.item(), name -> new ArrayList<>()).add(item);
      }
    }
  }

  private StockLeft.Left left(Material material) {
    return StockLeft.after(
        plans.getOrDefault(material.id(), List.of()),
        order.supplies().getOrDefault(material.id(), List.of()));
  }

  /** The text of on-hand-after.csv. */
  public String onHand(LengthStyle units) {
    CsvSheet sheet = new CsvSheet(ShopFields.ON_HAND);
    for (Material material : order.materials()) {
      for (Supply.OnHand sticks : sticksLeft(left(material))) {
        sheet.row(
            new CsvSheet.Row()
                .text(material.id())
                .exactLength(units, sticks.length())
                .number(sticks.qty())
                .text(sticks.place())
                .text(sticks.lot()));
      }
    }
    SortedSet<String> items = new TreeSet<>(order.items().keySet());
    items.addAll(itemPlans.keySet());
    for (String item : items) {
      int before = order.items().getOrDefault(item, ItemStock.unknown(item)).onHand();
      int left = LaterItems.onHandAfter(before, itemPlans.getOrDefault(item, List.of()));
      if (left > 0) {
        sheet.row(new CsvSheet.Row().text(item).empty(1).number(left).empty(2));
      }
    }
    other.onHand().forEach(row -> copy(row, ShopFields.ON_HAND, sheet));
    return sheet.text();
  }

  /** The text of rack-after.csv. */
  public String rack(LengthStyle units) {
    CsvSheet sheet = new CsvSheet(ShopFields.RACK);
    for (Material material : order.materials()) {
      for (Supply.RackOffcut offcut : offcutsLeft(left(material))) {
        sheet.row(
            new CsvSheet.Row()
                .text(offcut.id())
                .text(material.id())
                .exactLength(units, offcut.length())
                .empty(1)
                .text(offcut.ends().word())
                .text(offcut.place())
                .text(Supply.writtenLot(offcut.lot()))
                .empty(1));
      }
    }
    other.rack().forEach(row -> copy(row, ShopFields.RACK, sheet));
    return sheet.text();
  }

  private static void copy(Table.Row from, List<String> columns, CsvSheet sheet) {
    CsvSheet.Row row = new CsvSheet.Row();
    columns.forEach(column -> row.text(from.cell(column)));
    sheet.row(row);
  }

  /** Surplus of packs lies with what is on hand, wherever that is put. */
  private static Collection<Supply.OnHand> sticksLeft(StockLeft.Left left) {
    Map<String, Supply.OnHand> byKey = new LinkedHashMap<>();
    left.onHand().forEach(sticks -> byKey.put(sticks.key(), sticks));
    for (Supply.Bought bought : left.uncut()) {
      Supply.OnHand sticks = new Supply.OnHand(bought.length(), bought.qty(), "", "");
      byKey.merge(
          sticks.key(),
          sticks,
          (a, b) ->
              new Supply.OnHand(a.length(), Math.addExact(a.qty(), b.qty()), a.place(), a.lot()));
    }
    return byKey.values();
  }

  /** Nobody has written yet where the kept ones lie. */
  private static List<Supply.RackOffcut> offcutsLeft(StockLeft.Left left) {
    List<Supply.RackOffcut> offcuts = new ArrayList<>(left.rack());
    for (Supply.RackOffcut kept : left.kept()) {
      offcuts.add(new Supply.RackOffcut(kept.id(), kept.length(), kept.ends(), "", kept.lot()));
    }
    return offcuts;
  }
}

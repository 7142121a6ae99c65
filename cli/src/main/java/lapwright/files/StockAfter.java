package lapwright.files;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapwright.files.source.Table;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Pattern;
import lapwright.plan.Purchase;
import lapwright.shop.Ends;
import lapwright.shop.Material;
import lapwright.shop.Supply;

/**
 * What lies in the shop once a plan is carried out, as the files that the next week starts with:
 * sticks on hand that were not used and surplus of packs, offcuts that were not used and offcuts
 * that were kept.
 */
public final class StockAfter {
  public static final String ON_HAND_FILE = "on-hand-after.csv";
  public static final String RACK_FILE = "rack-after.csv";

  private final OrderInput input;
  private final Map<String, List<MaterialPlan>> plans = new HashMap<>();

  /**
   * @param input the folder as it is before
   * @param placed plans of orders that were placed one after the other
   */
  public StockAfter(OrderInput input, List<OrderPlan> placed) {
    this.input = input;
    for (OrderPlan plan : placed) {
      for (MaterialPlan material : plan.materials()) {
        plans.computeIfAbsent(material.material(), id -> new ArrayList<>()).add(material);
      }
    }
  }

  private List<MaterialPlan> plansOf(String material) {
    return plans.getOrDefault(material, List.of());
  }

  /** The text of on-hand-after.csv. */
  public String onHand(LengthStyle units) {
    CsvSheet sheet = new CsvSheet(KnownFields.ON_HAND);
    for (Material material : input.order().materials()) {
      for (Supply.OnHand sticks : sticksLeft(material.id()).values()) {
        sheet.row(
            new CsvSheet.Row()
                .text(material.id())
                .exactLength(units, sticks.length())
                .number(sticks.qty())
                .text(sticks.place())
                .text(sticks.lot()));
      }
    }
    input.otherStock().onHand().forEach(row -> copy(row, KnownFields.ON_HAND, sheet));
    return sheet.text();
  }

  /** The text of rack-after.csv. */
  public String rack(LengthStyle units) {
    CsvSheet sheet = new CsvSheet(KnownFields.RACK);
    for (Material material : input.order().materials()) {
      for (Supply.RackOffcut offcut : offcutsLeft(material.id())) {
        sheet.row(
            new CsvSheet.Row()
                .text(offcut.id())
                .text(material.id())
                .exactLength(units, offcut.length())
                .empty(1)
                .text(offcut.ends().word())
                .text(offcut.place())
                .text(offcut.lot())
                .empty(1));
      }
    }
    input.otherStock().rack().forEach(row -> copy(row, KnownFields.RACK, sheet));
    return sheet.text();
  }

  private static void copy(Table.Row from, List<String> columns, CsvSheet sheet) {
    CsvSheet.Row row = new CsvSheet.Row();
    columns.forEach(column -> row.text(from.cell(column)));
    sheet.row(row);
  }

  private List<Supply> suppliesOf(String material) {
    return input.order().supplies().getOrDefault(material, List.of());
  }

  private Map<String, Integer> used(String material) {
    Map<String, Integer> used = new HashMap<>();
    for (MaterialPlan plan : plansOf(material)) {
      plan.patterns()
          .forEach(pattern -> used.merge(pattern.supply(), pattern.times(), Math::addExact));
    }
    return used;
  }

  private Map<String, Supply.OnHand> sticksLeft(String material) {
    Map<String, Integer> used = used(material);
    Map<String, Supply.OnHand> left = new LinkedHashMap<>();
    for (Supply supply : suppliesOf(material)) {
      if (supply instanceof Supply.OnHand sticks) {
        add(
            left,
            sticks.length(),
            sticks.qty() - used.getOrDefault(sticks.key(), 0),
            sticks.place(),
            sticks.lot());
      }
    }
    for (Supply.Bought sticks : boughtAndUncut(material).values()) {
      add(left, sticks.length(), sticks.qty(), "", "");
    }
    return left;
  }

  /** Surplus of packs; what a later order cuts of an earlier one's is none. */
  private Map<String, Supply.Bought> boughtAndUncut(String material) {
    Map<String, Supply.Bought> uncut = new LinkedHashMap<>();
    for (MaterialPlan plan : plansOf(material)) {
      Map<String, Supply> byKey = new HashMap<>();
      plan.order().supplies().forEach(supply -> byKey.put(supply.key(), supply));
      for (Purchase purchase : plan.purchases()) {
        if (byKey.get(purchase.supply()) instanceof Supply.Offer offer) {
          int bought = Math.multiplyExact(purchase.packs(), offer.soldIn());
          count(uncut, offer.supplier(), offer.length(), bought);
        }
      }
      for (Pattern pattern : plan.patterns()) {
        Supply from = byKey.get(pattern.supply());
        if (from instanceof Supply.Offer offer) {
          count(uncut, offer.supplier(), offer.length(), -pattern.times());
        } else if (from instanceof Supply.Bought bought) {
          count(uncut, bought.supplier(), bought.length(), -pattern.times());
        }
      }
    }
    return uncut;
  }

  private static void count(
      Map<String, Supply.Bought> uncut, String supplier, Length length, int sticks) {
    String key = new Supply.Bought(supplier, length, 1).key();
    Supply.Bought before = uncut.get(key);
    int left = Math.addExact(before == null ? 0 : before.qty(), sticks);
    if (left > 0) {
      uncut.put(key, new Supply.Bought(supplier, length, left));
    } else {
      uncut.remove(key);
    }
  }

  private static void add(
      Map<String, Supply.OnHand> left, Length length, int qty, String place, String lot) {
    if (qty > 0) {
      Supply.OnHand sticks = new Supply.OnHand(length, qty, place, lot);
      left.merge(
          sticks.key(),
          sticks,
          (a, b) -> new Supply.OnHand(length, Math.addExact(a.qty(), b.qty()), place, lot));
    }
  }

  private List<Supply.RackOffcut> offcutsLeft(String material) {
    Map<String, Integer> used = used(material);
    List<Supply.RackOffcut> left = new ArrayList<>();
    for (Supply supply : suppliesOf(material)) {
      if (supply instanceof Supply.RackOffcut offcut && !used.containsKey(offcut.key())) {
        left.add(offcut);
      }
    }
    for (MaterialPlan plan : plansOf(material)) {
      Map<String, Supply> byKey = new HashMap<>();
      plan.order().supplies().forEach(supply -> byKey.put(supply.key(), supply));
      for (Pattern pattern : plan.patterns()) {
        Supply from = byKey.get(pattern.supply());
        if (from != null) {
          for (String name : pattern.offcutNames()) {
            Supply.RackOffcut kept =
                new Supply.RackOffcut(name, pattern.offcut(), ends(from), "", lot(from));
            if (!used.containsKey(kept.key())) {
              left.add(kept);
            }
          }
        }
      }
    }
    return left;
  }

  /** An offcut begins where the last piece was cut off, and ends where its stick ended. */
  private static Ends ends(Supply from) {
    return from.ends() == Ends.SAWN ? Ends.SAWN : Ends.ONE_MILL;
  }

  private static String lot(Supply from) {
    if (from instanceof Supply.OnHand sticks) {
      return sticks.lot();
    }
    return from instanceof Supply.RackOffcut offcut ? offcut.lot() : "";
  }
}

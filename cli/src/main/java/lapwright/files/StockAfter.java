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
  private final Map<String, MaterialPlan> plans = new HashMap<>();

  /**
   * @param input the folder as it is before
   */
  public StockAfter(OrderInput input, OrderPlan plan) {
    this.input = input;
    plan.materials().forEach(material -> plans.put(material.material(), material));
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
    MaterialPlan plan = plans.get(material);
    if (plan != null) {
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
    MaterialPlan plan = plans.get(material);
    if (plan == null) {
      return left;
    }
    for (Purchase purchase : plan.purchases()) {
      for (Supply supply : plan.order().supplies()) {
        if (supply instanceof Supply.Offer offer && offer.key().equals(purchase.supply())) {
          int bought = Math.multiplyExact(purchase.packs(), offer.soldIn());
          add(left, offer.length(), bought - used.getOrDefault(offer.key(), 0), "", "");
        }
      }
    }
    return left;
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
    MaterialPlan plan = plans.get(material);
    if (plan == null) {
      return left;
    }
    Map<String, Supply> byKey = new HashMap<>();
    plan.order().supplies().forEach(supply -> byKey.put(supply.key(), supply));
    for (Pattern pattern : plan.patterns()) {
      Supply from = byKey.get(pattern.supply());
      if (from != null) {
        for (String name : pattern.offcutNames()) {
          left.add(new Supply.RackOffcut(name, pattern.offcut(), ends(from), "", lot(from)));
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

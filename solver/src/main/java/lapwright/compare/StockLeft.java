package lapwright.compare;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Pattern;
import lapwright.plan.Purchase;
import lapwright.shop.Ends;
import lapwright.shop.Supply;

/**
 * What placed orders leave of one material: the shop's stock less what their tickets take, sticks
 * bought and not cut, and the offcuts that they put on the rack.
 */
public final class StockLeft {
  private final Map<String, Supply> supplies = new HashMap<>();
  private final Map<String, Integer> used = new HashMap<>();
  private final Map<String, Integer> boughtPacks = new HashMap<>();
  private final Map<String, Supply.Bought> uncut = new LinkedHashMap<>();
  private final Map<String, Supply.RackOffcut> kept = new LinkedHashMap<>();
  private final Set<String> usedUp = new HashSet<>();

  private StockLeft(List<MaterialPlan> plans) {
    plans.forEach(this::follow);
  }

  /**
   * What is left of each kind, in the order of the shop and of the plans.
   *
   * @param offers what can still be bought
   * @param uncut sticks bought and not cut
   * @param onHand sticks on hand that no plan takes
   * @param rack offcuts of the shop that no plan takes
   * @param kept offcuts that the plans put on the rack; their place names the ticket
   */
  public record Left(
      List<Supply.Offer> offers,
      List<Supply.Bought> uncut,
      List<Supply.OnHand> onHand,
      List<Supply.RackOffcut> rack,
      List<Supply.RackOffcut> kept) {
    public Left {
      offers = List.copyOf(offers);
      uncut = List.copyOf(uncut);
      onHand = List.copyOf(onHand);
      rack = List.copyOf(rack);
      kept = List.copyOf(kept);
    }

    /** The supplies of the next order. */
    List<Supply> supplies() {
      List<Supply> all = new ArrayList<>(offers);
      all.addAll(uncut);
      all.addAll(onHand);
      all.addAll(rack);
      all.addAll(kept);
      return all;
    }
  }

  /**
   * What the plans leave of one material.
   *
   * @param plans of this material, in the order in which they were placed
   * @param shop what the shop has and is offered, stock as it was before the placed orders; offcuts
   *     that they use up or put on the rack may be listed or not
   */
  public static Left after(List<MaterialPlan> plans, List<Supply> shop) {
    return new StockLeft(plans).with(shop);
  }

  /**
   * True when the sticks on hand are just what the placed orders leave, and not what they began
   * with: somebody has counted them off already.
   */
  static boolean isCountedOff(List<MaterialPlan> plans, List<Supply> shop) {
    StockLeft left = new StockLeft(plans);
    Map<String, Integer> before = new HashMap<>();
    left.supplies
        .values()
        .forEach(
            supply -> {
              if (supply instanceof Supply.OnHand sticks) {
                before.put(sticks.key(), sticks.qty());
              }
            });
    Map<String, Integer> after = new HashMap<>(before);
    before
        .keySet()
        .forEach(key -> after.merge(key, -left.used.getOrDefault(key, 0), Math::addExact));
    left.uncut
        .values()
        .forEach(
            bought ->
                after.merge(
                    new Supply.OnHand(bought.length(), bought.qty(), "", "").key(),
                    bought.qty(),
                    Math::addExact));
    after.values().removeIf(sticks -> sticks == 0);
    Map<String, Integer> now = new HashMap<>();
    for (Supply supply : shop) {
      if (supply instanceof Supply.OnHand sticks) {
        now.put(sticks.key(), sticks.qty());
      }
    }
    return now.equals(after) && !now.equals(before);
  }

  private void follow(MaterialPlan plan) {
    Map<String, Integer> cut = new HashMap<>();
    plan.order().supplies().forEach(supply -> supplies.putIfAbsent(supply.key(), supply));
    for (Pattern pattern : plan.patterns()) {
      Supply from = supplies.get(pattern.supply());
      if (from == null) {
        continue;
      }
      cut.merge(from.key(), pattern.times(), Math::addExact);
      if (from instanceof Supply.RackOffcut offcut) {
        usedUp.add(offcut.id());
        kept.remove(offcut.id());
      }
    }
    for (Pattern pattern : plan.patterns()) {
      Supply from = supplies.get(pattern.supply());
      if (from != null) {
        keep(pattern, from);
      }
    }
    cut.forEach(
        (key, sticks) -> {
          used.merge(key, sticks, Math::addExact);
          if (supplies.get(key) instanceof Supply.Bought bought) {
            add(bought.supplier(), bought, -sticks);
          }
        });
    for (Purchase purchase : plan.purchases()) {
      if (supplies.get(purchase.supply()) instanceof Supply.Offer offer) {
        boughtPacks.merge(offer.key(), purchase.packs(), Math::addExact);
        add(
            offer.supplier(),
            offer,
            Math.multiplyExact(purchase.packs(), offer.soldIn())
                - cut.getOrDefault(offer.key(), 0));
      }
    }
  }

  private void add(String supplier, Supply like, int sticks) {
    String key = new Supply.Bought(supplier, like.length(), 1).key();
    Supply.Bought before = uncut.get(key);
    int left = Math.addExact(before == null ? 0 : before.qty(), sticks);
    if (left == 0) {
      uncut.remove(key);
    } else {
      uncut.put(key, new Supply.Bought(supplier, like.length(), left));
    }
  }

  private void keep(Pattern pattern, Supply from) {
    Ends ends = from.ends() == Ends.SAWN ? Ends.SAWN : Ends.ONE_MILL;
    String lot =
        from instanceof Supply.OnHand sticks
            ? sticks.lot()
            : from instanceof Supply.RackOffcut offcut ? offcut.lot() : lotOnceBought(from);
    for (String name : pattern.offcutNames()) {
      kept.put(
          name,
          new Supply.RackOffcut(
              name, pattern.offcut(), ends, "from ticket " + pattern.ticket(), lot));
    }
  }

  /** The lot of what is left of a supply, once it is bought. */
  static String lotOnceBought(Supply supply) {
    return supply instanceof Supply.Offer offer
        ? new Supply.Bought(offer.supplier(), offer.length(), 1).lotKey()
        : supply.lotKey();
  }

  private Left with(List<Supply> shop) {
    List<Supply.Offer> offers = new ArrayList<>();
    List<Supply.OnHand> onHand = new ArrayList<>();
    List<Supply.RackOffcut> rack = new ArrayList<>();
    for (Supply supply : shop) {
      if (supply instanceof Supply.Offer offer) {
        offers.add(lessBought(offer));
      } else if (supply instanceof Supply.OnHand sticks) {
        int left = sticks.qty() - used.getOrDefault(sticks.key(), 0);
        if (left > 0) {
          onHand.add(new Supply.OnHand(sticks.length(), left, sticks.place(), sticks.lot()));
        }
      } else if (supply instanceof Supply.RackOffcut offcut
          && !usedUp.contains(offcut.id())
          && !kept.containsKey(offcut.id())) {
        rack.add(offcut);
      }
    }
    return new Left(offers, List.copyOf(uncut.values()), onHand, rack, List.copyOf(kept.values()));
  }

  /** What can still be had of an offer whose limit the placed orders have used in part. */
  private Supply.Offer lessBought(Supply.Offer offer) {
    int sticks = boughtPacks.getOrDefault(offer.key(), 0) * offer.soldIn();
    return offer.atMostSticks() == Integer.MAX_VALUE || sticks == 0
        ? offer
        : new Supply.Offer(
            offer.supplier(),
            offer.length(),
            offer.price(),
            offer.soldIn(),
            Math.max(0, offer.atMostSticks() - sticks),
            offer.code(),
            offer.quoted(),
            offer.goodUntil());
  }
}

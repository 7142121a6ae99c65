package lapwright.check;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import lapwright.measure.Length;
import lapwright.plan.ItemPlan;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Pattern;
import lapwright.plan.Purchase;
import lapwright.plan.RunLine;
import lapwright.shop.Ends;
import lapwright.shop.ItemOrder;
import lapwright.shop.RunNeed;
import lapwright.shop.Supply;

/**
 * Checks orders that were placed one after the other: each by itself, then that no later one takes
 * what an earlier one did not leave, needs again what is cut already, or repeats a name.
 */
public final class PlacedCheck {
  private final List<PlanFault> found = new ArrayList<>();
  private final Set<String> tickets = new HashSet<>();

  /** Lines of runs that earlier orders lay, by material, job, mark and number. */
  private final Set<String> lines = new HashSet<>();

  /** Uncut sticks of earlier orders, by material and key. */
  private final Map<String, Long> uncut = new HashMap<>();

  /** Offcuts that earlier orders put on the rack, by name. */
  private final Map<String, Left> kept = new HashMap<>();

  /** Offcuts that earlier orders used up, by name. */
  private final Set<String> usedUp = new HashSet<>();

  /** Items that earlier orders bought and no job needs, by item; less than 0 by what is missing. */
  private final Map<String, Long> items = new HashMap<>();

  /** Items that each copy of each job was given by earlier orders. */
  private final Map<String, Long> given = new HashMap<>();

  private record Left(String material, Length length, Ends ends) {}

  /** Joints of the last line that earlier orders placed, by material, job, mark and copy. */
  private final Map<String, List<Long>> lastJoints = new HashMap<>();

  private PlacedCheck() {}

  /**
   * Sound, or all the faults of all orders.
   *
   * @param orders in the order in which they were placed, at least one
   */
  public static PlacedVerdict check(List<OrderPlan> orders) {
    PlacedCheck check = new PlacedCheck();
    List<CheckedPlan> sound = new ArrayList<>();
    for (OrderPlan order : orders) {
      Verdict verdict = PlanCheck.check(order);
      if (verdict instanceof Verdict.Sound one) {
        sound.add(one.plan());
        check.follow(order);
      } else {
        check.found.addAll(((Verdict.Broken) verdict).faults());
      }
    }
    return check.found.isEmpty()
        ? new PlacedVerdict.Sound(sound)
        : new PlacedVerdict.Broken(check.found);
  }

  private void follow(OrderPlan order) {
    for (MaterialPlan plan : order.materials()) {
      Faults faults = new Faults(plan.material(), found);
      for (Supply supply : plan.order().supplies()) {
        checkLeft(plan.material(), supply, faults);
      }
      for (Pattern pattern : plan.patterns()) {
        if (!tickets.add(pattern.ticket())) {
          faults.ofTicket(
              pattern.ticket(), Rule.TICKET_NAME, "a name that no earlier ticket has", "one");
        }
      }
    }
    order.materials().forEach(this::checkLines);
    order.materials().forEach(this::checkStagger);
    order.materials().forEach(this::take);
    order.materials().forEach(this::leave);
    order.items().forEach(this::follow);
  }

  private void checkLines(MaterialPlan plan) {
    Faults faults = new Faults(plan.material(), found);
    Set<String> here = new TreeSet<>();
    for (RunLine line : plan.runs()) {
      here.add("line " + line.line() + " of run " + line.mark() + " of job " + line.job());
    }
    for (String line : here) {
      if (!lines.add(plan.material() + "\n" + line)) {
        faults.ofMaterial(Rule.RUN_LINES, line + " once, by one order", "once more");
      }
    }
  }

  /** The first line that an order adds to a copy of a run stands beside the last one before. */
  private void checkStagger(MaterialPlan plan) {
    RunCheck runs = new RunCheck(plan, new Faults(plan.material(), new ArrayList<>()));
    runs.run();
    RunCheck telling = new RunCheck(plan, new Faults(plan.material(), found));
    for (RunNeed need : plan.order().runs()) {
      int qty = need.run().qty();
      for (int copy = need.firstCopy(); copy <= need.lastCopy(); copy++) {
        int first = need.firstLine() + (copy - need.firstCopy()) * qty;
        String key = plan.material() + "\n" + need.job() + "\n" + need.run().mark() + "\n" + copy;
        List<Long> before = lastJoints.getOrDefault(key, List.of());
        telling.checkApart(
            need,
            "line " + first + " and the one placed before it",
            before,
            runs.joints(need, first));
        lastJoints.put(key, runs.joints(need, first + qty - 1));
      }
    }
  }

  private void follow(ItemPlan plan) {
    Faults faults = new Faults(plan.item(), found);
    long left = items.getOrDefault(plan.item(), 0L);
    if (plan.order().leftOver() != left) {
      faults.ofMaterial(Rule.PLACED_BEFORE, left + " left over", plan.order().leftOver());
    }
    left += (long) plan.fromOnHand() + plan.bought();
    for (ItemOrder.Need need : plan.order().needs()) {
      left -= need.total();
      for (int copy = need.firstCopy(); copy <= need.lastCopy(); copy++) {
        String key = plan.item() + "\n" + need.job() + "\n" + copy;
        if (given.merge(key, (long) need.qty(), Math::addExact) < 0) {
          faults.ofMaterial(
              Rule.PLACED_BEFORE,
              "no more back from " + need.job() + " than it was given",
              need.qty());
        }
      }
    }
    items.put(plan.item(), left);
  }

  private void checkLeft(String material, Supply supply, Faults faults) {
    if (supply instanceof Supply.Bought bought) {
      long left = uncut.getOrDefault(stickKey(material, bought), 0L);
      if (bought.qty() > left) {
        faults.ofMaterial(
            Rule.PLACED_BEFORE, "at most " + left + " of " + bought.key(), bought.qty());
      }
    } else if (supply instanceof Supply.RackOffcut offcut) {
      Left left = kept.get(offcut.id());
      if (usedUp.contains(offcut.id())) {
        faults.ofMaterial(Rule.PLACED_BEFORE, "no offcut that is used up", "offcut " + offcut.id());
      } else if (left != null && !left.equals(new Left(material, offcut.length(), offcut.ends()))) {
        faults.ofMaterial(
            Rule.PLACED_BEFORE,
            "offcut " + offcut.id() + " as it was left, " + Faults.mm(left.length().units()),
            offcut.length());
      }
    }
  }

  private void take(MaterialPlan plan) {
    Map<String, Supply> supplies = byKey(plan);
    for (Pattern pattern : plan.patterns()) {
      Supply supply = supplies.get(pattern.supply());
      if (supply instanceof Supply.RackOffcut offcut) {
        usedUp.add(offcut.id());
        kept.remove(offcut.id());
      } else if (supply instanceof Supply.Bought || supply instanceof Supply.Offer) {
        uncut.merge(stickKey(plan.material(), supply), -(long) pattern.times(), Math::addExact);
      }
    }
    for (Purchase purchase : plan.purchases()) {
      if (supplies.get(purchase.supply()) instanceof Supply.Offer offer) {
        uncut.merge(
            stickKey(plan.material(), offer),
            (long) purchase.packs() * offer.soldIn(),
            Math::addExact);
      }
    }
  }

  private void leave(MaterialPlan plan) {
    Faults faults = new Faults(plan.material(), found);
    Map<String, Supply> supplies = byKey(plan);
    for (Pattern pattern : plan.patterns()) {
      Supply from = supplies.get(pattern.supply());
      Ends ends = from == null || from.ends() == Ends.SAWN ? Ends.SAWN : Ends.ONE_MILL;
      for (String name : pattern.offcutNames()) {
        if (usedUp.contains(name)
            || kept.put(name, new Left(plan.material(), pattern.offcut(), ends)) != null) {
          faults.ofTicket(
              pattern.ticket(),
              Rule.OFFCUT_NAME,
              "a name that no offcut of an earlier order bears",
              name);
        }
      }
    }
  }

  private static Map<String, Supply> byKey(MaterialPlan plan) {
    Map<String, Supply> supplies = new HashMap<>();
    plan.order().supplies().forEach(supply -> supplies.put(supply.key(), supply));
    return supplies;
  }

  /** Sticks of one maker and length lie together, whatever packs they came in. */
  private static String stickKey(String material, Supply supply) {
    String supplier =
        supply instanceof Supply.Offer offer
            ? offer.supplier()
            : supply instanceof Supply.Bought bought ? bought.supplier() : "";
    return material + "\n" + new Supply.Bought(supplier, supply.length(), 1).key();
  }
}

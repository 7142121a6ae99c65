package lapwright.check;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import lapwright.measure.Money;
import lapwright.plan.Division;
import lapwright.plan.ItemPlan;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Pattern;
import lapwright.shop.Supply;

/**
 * Checks a plan from the shop's data that it carries: every rule of cutting, buying and accounting,
 * and the lower bound of every material. Stateless.
 */
public final class PlanCheck {
  private PlanCheck() {}

  /** Sound, or all the faults of the plan. */
  public static Verdict check(OrderPlan plan) {
    List<PlanFault> found = new ArrayList<>();
    checkNames(plan, found);
    checkDivision(plan, found);
    List<MaterialBound> bounds = new ArrayList<>();
    for (MaterialPlan material : plan.materials()) {
      Faults faults = new Faults(material.material(), found);
      try {
        new MaterialCheck(material, faults).run();
        new RunCheck(material, faults).run();
        if (RunBoundCheck.isFor(material)) {
          new RunBoundCheck(material, faults).run().ifPresent(bounds::add);
        } else {
          new BoundCheck(material, faults).run().ifPresent(bounds::add);
        }
      } catch (ArithmeticException tooLarge) {
        faults.ofMaterial(
            Rule.ACCOUNT, "lengths, counts and costs that add up within 64 bits", "larger ones");
      }
    }
    ItemCheck.check(plan, found);
    return found.isEmpty()
        ? new Verdict.Sound(new CheckedPlan(plan, bounds))
        : new Verdict.Broken(found);
  }

  /** What the jobs pay is the cost to the cent, and they are the jobs of the plan. */
  private static void checkDivision(OrderPlan plan, List<PlanFault> found) {
    Division division = plan.division();
    if (division == null) {
      return;
    }
    long cost = 0;
    Set<String> jobs = new TreeSet<>();
    for (MaterialPlan material : plan.materials()) {
      if (material.order().isPriced()) {
        cost = Math.addExact(cost, material.cost());
        material.order().needs().forEach(need -> jobs.add(need.job()));
        material.order().runs().forEach(need -> jobs.add(need.job()));
      }
    }
    for (ItemPlan item : plan.items()) {
      if (item.isPriced()) {
        cost = Math.addExact(cost, item.cost());
        item.order().needs().forEach(need -> jobs.add(need.job()));
      }
    }
    Faults faults = new Faults("", found);
    Money total = new Money(cost).toCent();
    if (!division.total().equals(total)) {
      faults.ofMaterial(Rule.DIVISION, cents(total), cents(division.total()));
    }
    List<String> paying = division.jobs().stream().map(Division.JobPart::job).toList();
    if (!paying.equals(List.copyOf(jobs))) {
      faults.ofMaterial(Rule.DIVISION, String.join(", ", jobs), String.join(", ", paying));
    }
  }

  private static String cents(Money money) {
    return money.tenThousandths() / Money.PER_CENT + " cents";
  }

  /** Names that are to be unique in the whole plan. */
  private static void checkNames(OrderPlan plan, List<PlanFault> found) {
    Set<String> materials = new HashSet<>();
    Set<String> tickets = new HashSet<>();
    Set<String> offcuts = stayingOnTheRack(plan);
    for (MaterialPlan material : plan.materials()) {
      Faults faults = new Faults(material.material(), found);
      if (!materials.add(material.material())) {
        faults.ofMaterial(Rule.MATERIAL, "one plan", "another");
      }
      for (Pattern pattern : material.patterns()) {
        if (pattern.ticket().isBlank() || !tickets.add(pattern.ticket())) {
          faults.ofTicket(
              pattern.ticket(),
              Rule.TICKET_NAME,
              "a name that no other ticket has",
              pattern.ticket().isBlank() ? "none" : pattern.ticket());
        }
        for (String name : pattern.offcutNames()) {
          if (name.isBlank() || !offcuts.add(name)) {
            faults.ofTicket(
                pattern.ticket(),
                Rule.OFFCUT_NAME,
                "a name that no other offcut bears",
                name.isBlank() ? "none" : name);
          }
        }
      }
    }
  }

  /** Offcuts that lie on the rack and are not used up by the plan. */
  private static Set<String> stayingOnTheRack(OrderPlan plan) {
    Set<String> staying = new HashSet<>();
    for (MaterialPlan material : plan.materials()) {
      Set<String> used =
          material.patterns().stream().map(Pattern::supply).collect(Collectors.toSet());
      for (Supply supply : material.order().supplies()) {
        if (supply instanceof Supply.RackOffcut offcut && !used.contains(offcut.key())) {
          staying.add(offcut.id());
        }
      }
    }
    return staying;
  }
}

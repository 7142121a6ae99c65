package lapwright.paperwork;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.Predicate;
import lapwright.check.CheckedPlan;
import lapwright.compare.OneMore;
import lapwright.effort.Effort;
import lapwright.measure.Length;
import lapwright.plan.Cut;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Pattern;
import lapwright.shop.Need;
import lapwright.shop.OneLotPer;
import lapwright.shop.RunNeed;
import lapwright.shop.Shop;
import lapwright.shop.Supply;

/**
 * Where the pieces of one mark land, with what, and what one more would cost.
 *
 * @param shop the shop's own facts
 * @param mark the mark that was asked for
 * @param kinds by material as the plan lists them, then by job; empty when no job has the mark
 */
public record MarkPaper(Shop shop, String mark, List<Kind> kinds) {
  public MarkPaper {
    Objects.requireNonNull(shop);
    Objects.requireNonNull(mark);
    kinds = List.copyOf(kinds);
  }

  /**
   * Pieces of one job and length, or one run.
   *
   * @param job name of the job
   * @param material id
   * @param name what people call the material
   * @param length finished length of a piece, or the covered length of a run
   * @param count pieces, or lines of a run, over all copies of the job
   * @param isRun true for a run
   * @param purpose what it is for; empty when not given
   * @param landings in the order of the tickets
   * @param oneMore what one more would cost
   */
  public record Kind(
      String job,
      String material,
      String name,
      Length length,
      int count,
      boolean isRun,
      String purpose,
      List<Landing> landings,
      OneMore.Answer oneMore) {
    public Kind {
      Objects.requireNonNull(job);
      Objects.requireNonNull(material);
      Objects.requireNonNull(name);
      Objects.requireNonNull(length);
      Objects.requireNonNull(purpose);
      Objects.requireNonNull(oneMore);
      landings = List.copyOf(landings);
    }

    /** Pieces that are cut. */
    public int pieces() {
      return landings.stream()
          .mapToInt(landing -> Math.multiplyExact(landing.each(), landing.sticks()))
          .reduce(0, Math::addExact);
    }
  }

  /**
   * A ticket that cuts some of them.
   *
   * @param ticket name of the ticket
   * @param supply what its sticks are
   * @param sticks how many sticks are cut that way
   * @param each pieces of the mark from each stick
   * @param neighbours what else comes from each stick
   * @param offcut what is left of each stick
   * @param kept true when that goes to the rack
   */
  public record Landing(
      String ticket,
      Supply supply,
      int sticks,
      int each,
      List<Cut> neighbours,
      Length offcut,
      boolean kept) {
    public Landing {
      Objects.requireNonNull(ticket);
      Objects.requireNonNull(supply);
      Objects.requireNonNull(offcut);
      neighbours = List.copyOf(neighbours);
    }
  }

  /** All marks of the plans, each once, in the order of their letters. */
  public static SortedSet<String> marks(List<CheckedPlan> plans) {
    SortedSet<String> marks = new TreeSet<>();
    for (CheckedPlan plan : plans) {
      for (MaterialPlan material : plan.plan().materials()) {
        material.order().needs().forEach(need -> marks.add(need.mark()));
        material.order().runs().forEach(need -> marks.add(need.run().mark()));
      }
    }
    marks.remove("");
    return marks;
  }

  /**
   * The paper of orders that were placed one after the other, at least one; what one more would
   * cost is planned for every kind, in the order that it belongs to.
   */
  public static MarkPaper of(List<CheckedPlan> plans, String mark, OneMore oneMore, Effort effort) {
    List<Kind> kinds = new ArrayList<>();
    plans.forEach(plan -> kinds.addAll(kinds(plan, mark, oneMore, effort)));
    return new MarkPaper(plans.get(0).plan().shop(), mark, kinds);
  }

  private static List<Kind> kinds(
      CheckedPlan checked, String mark, OneMore oneMore, Effort effort) {
    Shop shop = checked.plan().shop();
    List<Kind> kinds = new ArrayList<>();
    for (MaterialPlan plan : checked.plan().materials()) {
      List<Need> told = new ArrayList<>();
      Map<List<Object>, OneMore.Answer> ofShape = new HashMap<>();
      for (Need need : plan.order().needs()) {
        if (need.mark().equals(mark) && told.stream().noneMatch(other -> isSameKind(other, need))) {
          told.add(need);
          // One more of a length costs the same for every job, unless jobs have their own lots.
          List<Object> shape = List.of(need.length(), need.rules());
          OneMore.Answer answer = ofShape.get(shape);
          if (answer == null || plan.order().material().oneLotPer() != OneLotPer.NONE) {
            answer = oneMore.ask(shop, plan, need, effort);
          }
          ofShape.put(shape, answer);
          kinds.add(kind(plan, need, answer));
        }
      }
      for (RunNeed need : plan.order().runs()) {
        if (need.run().mark().equals(mark)) {
          kinds.add(kind(plan, need, oneMore.ask(shop, plan, need, effort)));
        }
      }
    }
    return kinds;
  }

  private static boolean isSameKind(Need a, Need b) {
    return a.job().equals(b.job()) && a.mark().equals(b.mark()) && a.length().equals(b.length());
  }

  private static Kind kind(MaterialPlan plan, Need need, OneMore.Answer oneMore) {
    int count =
        plan.order().needs().stream()
            .filter(other -> isSameKind(other, need))
            .mapToInt(Need::total)
            .reduce(0, Math::addExact);
    return new Kind(
        need.job(),
        plan.material(),
        plan.order().material().name(),
        need.length(),
        count,
        false,
        need.purpose(),
        landings(
            plan,
            cut ->
                cut.job().equals(need.job())
                    && cut.mark().equals(need.mark())
                    && cut.length().equals(need.length())),
        oneMore);
  }

  private static Kind kind(MaterialPlan plan, RunNeed need, OneMore.Answer oneMore) {
    String pieces = need.run().mark() + "/";
    return new Kind(
        need.job(),
        plan.material(),
        plan.order().material().name(),
        need.run().length(),
        need.lines(),
        true,
        need.run().purpose(),
        landings(plan, cut -> cut.job().equals(need.job()) && cut.mark().startsWith(pieces)),
        oneMore);
  }

  private static List<Landing> landings(MaterialPlan plan, Predicate<Cut> wanted) {
    Supplies supplies = Supplies.of(plan.order());
    List<Landing> landings = new ArrayList<>();
    for (Pattern pattern : plan.patterns()) {
      int each = pattern.cuts().stream().filter(wanted).mapToInt(Cut::qty).sum();
      if (each > 0) {
        landings.add(
            new Landing(
                pattern.ticket(),
                supplies.named(pattern.supply()),
                pattern.times(),
                each,
                pattern.cuts().stream().filter(wanted.negate()).toList(),
                pattern.offcut(),
                !pattern.offcutNames().isEmpty()));
      }
    }
    return landings;
  }
}

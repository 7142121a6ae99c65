package lapwright.paperwork;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import lapwright.check.CheckedPlan;
import lapwright.measure.Angle;
import lapwright.measure.Length;
import lapwright.plan.Cut;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Pattern;
import lapwright.shop.CutRules;
import lapwright.shop.Ends;
import lapwright.shop.Material;
import lapwright.shop.Saw;
import lapwright.shop.Shop;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/**
 * The tickets for the saw and, for each copy of each job, where its pieces come from.
 *
 * @param shop the shop's own facts
 * @param tickets in the order in which they are cut: by order as placed, those of one saw together
 * @param ofOrder how many of the tickets each order has, the first order first
 * @param jobs first due first, a repeated job copy by copy
 * @param layouts how runs are laid
 */
public record TicketPaper(
    Shop shop,
    List<Ticket> tickets,
    List<Integer> ofOrder,
    List<JobList> jobs,
    LayoutPaper layouts) {
  public TicketPaper {
    Objects.requireNonNull(shop);
    Objects.requireNonNull(layouts);
    tickets = List.copyOf(tickets);
    ofOrder = List.copyOf(ofOrder);
    if (ofOrder.stream().mapToInt(Integer::intValue).sum() != tickets.size()) {
      throw new IllegalArgumentException(ofOrder + " are not " + tickets.size() + " tickets");
    }
    jobs = List.copyOf(jobs);
  }

  /**
   * One pattern for the saw operator.
   *
   * @param name of the ticket
   * @param material what is cut
   * @param saw the machine
   * @param supply where its sticks come from
   * @param sticks how many are cut this way
   * @param endTrim cut off first to square the end, its kerf included; 0 when the end is good
   * @param steps the cuts in the order in which they are made
   * @param uncut true when the stick is the piece as it comes
   * @param longestLast true when the vise holds the last piece itself at the last cut, so the
   *     longest piece comes last
   * @param shortestStick the shortest stick that still gives all its pieces
   * @param offcut what is left of each stick, 0 when nothing is; to its short point where its end
   *     is angled
   * @param kept true when the offcut goes to the rack
   * @param offcutEnds which ends of the offcut are the mill's
   * @param offcutNames one a stick when kept
   */
  public record Ticket(
      String name,
      Material material,
      Saw saw,
      Supply supply,
      int sticks,
      Length endTrim,
      List<Step> steps,
      boolean uncut,
      boolean longestLast,
      Length shortestStick,
      Length offcut,
      boolean kept,
      Ends offcutEnds,
      List<String> offcutNames) {
    public Ticket {
      Objects.requireNonNull(name);
      Objects.requireNonNull(supply);
      steps = List.copyOf(steps);
      offcutNames = List.copyOf(offcutNames);
    }

    /** Pieces from one stick. */
    public int pieces() {
      return steps.stream().mapToInt(step -> step.cut().qty()).reduce(0, Math::addExact);
    }

    /** How many sticks are cut at once, pass by pass. */
    public List<Integer> passes() {
      List<Integer> passes = new ArrayList<>();
      for (int left = sticks; left > 0; left -= saw.stack()) {
        passes.add(Math.min(left, saw.stack()));
      }
      return passes;
    }

    /** The angle at which the last cut leaves the offcut; square where nothing is left. */
    public Angle offcutAngle() {
      return offcut.isZero()
          ? Angle.SQUARE
          : steps.get(steps.size() - 1).cut().rules().ends().second();
    }

    /** True when some piece has an angled end. */
    public boolean isAngled() {
      return steps.stream().anyMatch(step -> !step.cut().rules().ends().isSquare());
    }

    /** True when some piece must not be turned end for end. */
    public boolean isOneWay() {
      return material.oneWay() || steps.stream().anyMatch(step -> step.cut().rules().oneWay());
    }
  }

  /**
   * Equal pieces cut one after the other; the stop is set to the length of the cut.
   *
   * @param cut whose pieces, how long, how many
   * @param ends where the far end of each piece, its long point, lies on a tape hooked on the
   *     squared end, kerfs included
   */
  public record Step(Cut cut, List<Length> ends) {
    public Step {
      Objects.requireNonNull(cut);
      ends = List.copyOf(ends);
    }
  }

  /**
   * The pieces of one copy of a job, and what is packed with them.
   *
   * @param job name of the job
   * @param due the day it leaves the shop; null when not given
   * @param copy from 1
   * @param copies how many times the job is built
   * @param lines by material, then as the job lists them
   * @param items counted goods to pack with it, by name
   */
  public record JobList(
      String job,
      @Nullable LocalDate due,
      int copy,
      int copies,
      List<PieceLine> lines,
      List<ItemCount> items) {
    public JobList {
      Objects.requireNonNull(job);
      lines = List.copyOf(lines);
      items = List.copyOf(items);
    }
  }

  /** So many pieces of an item. */
  public record ItemCount(String item, int qty) {
    public ItemCount {
      Objects.requireNonNull(item);
    }
  }

  /**
   * Pieces of a job that are alike.
   *
   * @param material what they are of
   * @param mark the drawing's mark; empty when it has none
   * @param length as they are cut, from point to point where ends are angled
   * @param qty how many
   * @param purpose what they are for; empty when not given
   * @param rules how they are cut
   * @param shorter how much shorter than the job asks for
   * @param from the tickets that they come from, in the order in which they are cut
   */
  public record PieceLine(
      Material material,
      String mark,
      Length length,
      int qty,
      CutRules rules,
      Length shorter,
      String purpose,
      List<FromTicket> from) {
    public PieceLine {
      Objects.requireNonNull(material);
      Objects.requireNonNull(mark);
      Objects.requireNonNull(purpose);
      from = List.copyOf(from);
    }
  }

  /**
   * A ticket and how many pieces it gives.
   *
   * @param ticket name of the ticket
   * @param qty pieces over all its sticks
   */
  public record FromTicket(String ticket, int qty) {}

  /** The paper of a checked plan. */
  public static TicketPaper of(CheckedPlan checked) {
    return of(List.of(checked));
  }

  /** The paper of orders that were placed one after the other, the first first. */
  public static TicketPaper of(List<CheckedPlan> placed) {
    List<Ticket> tickets = new ArrayList<>();
    List<Integer> ofOrder = new ArrayList<>();
    for (CheckedPlan checked : placed) {
      List<Ticket> bySaw = bySaw(checked.plan());
      tickets.addAll(bySaw);
      ofOrder.add(bySaw.size());
    }
    return new TicketPaper(
        placed.get(placed.size() - 1).plan().shop(),
        tickets,
        ofOrder,
        JobLists.of(placed.stream().map(CheckedPlan::plan).toList()),
        LayoutPaper.of(placed));
  }

  private static List<Ticket> bySaw(OrderPlan plan) {
    Map<String, List<Ticket>> bySaw = new LinkedHashMap<>();
    for (MaterialPlan material : plan.materials()) {
      Supplies supplies = Supplies.of(material.order());
      for (Pattern pattern : material.patterns()) {
        bySaw
            .computeIfAbsent(material.order().saw().id(), saw -> new ArrayList<>())
            .add(ticket(material, supplies.named(pattern.supply()), pattern));
      }
    }
    return bySaw.values().stream().flatMap(List::stream).toList();
  }

  /** The tickets that give pieces of some jobs, and those jobs' lists. */
  public TicketPaper only(Collection<String> someJobs) {
    List<Ticket> some = new ArrayList<>();
    List<Integer> someOfOrder = new ArrayList<>();
    int from = 0;
    for (int count : ofOrder) {
      int before = some.size();
      for (Ticket ticket : tickets.subList(from, from + count)) {
        if (ticket.steps().stream().anyMatch(step -> someJobs.contains(step.cut().job()))) {
          some.add(ticket);
        }
      }
      from += count;
      someOfOrder.add(some.size() - before);
    }
    return new TicketPaper(
        shop,
        some,
        someOfOrder,
        jobs.stream().filter(list -> someJobs.contains(list.job())).toList(),
        layouts.only(someJobs));
  }

  public int sticks() {
    return tickets.stream().mapToInt(Ticket::sticks).reduce(0, Math::addExact);
  }

  public int pieces() {
    return tickets.stream()
        .mapToInt(ticket -> Math.multiplyExact(ticket.sticks(), ticket.pieces()))
        .reduce(0, Math::addExact);
  }

  private static Ticket ticket(MaterialPlan plan, Supply supply, Pattern pattern) {
    Saw saw = plan.order().saw();
    StickCount stick = StickCount.of(plan.order(), supply, pattern);
    Length longest =
        pattern.cuts().stream().map(Cut::held).max(Length::compareTo).orElse(Length.ZERO);
    Length last = pattern.cuts().get(pattern.cuts().size() - 1).held();
    boolean manyLengths = pattern.cuts().stream().anyMatch(cut -> !cut.held().equals(longest));
    return new Ticket(
        pattern.ticket(),
        plan.order().material(),
        saw,
        supply,
        pattern.times(),
        stick.endTrim(),
        steps(pattern, saw.kerf()),
        stick.isUncut(),
        manyLengths && last.equals(longest),
        stick.shortestThatWorks(saw, longest),
        stick.offcut(),
        stick.kept(),
        supply.ends() == Ends.SAWN ? Ends.SAWN : Ends.ONE_MILL,
        pattern.offcutNames());
  }

  private static List<Step> steps(Pattern pattern, Length kerf) {
    List<Step> steps = new ArrayList<>();
    Length start = Length.ZERO;
    for (Cut cut : pattern.cuts()) {
      List<Length> ends = new ArrayList<>();
      for (int i = 0; i < cut.qty(); i++) {
        Length end = start.plus(cut.length());
        ends.add(end);
        start = end.plus(cut.rules().cutWidth(kerf));
      }
      steps.add(new Step(cut, ends));
    }
    return steps;
  }
}

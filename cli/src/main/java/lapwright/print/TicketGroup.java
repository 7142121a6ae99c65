package lapwright.print;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import lapwright.measure.Length;
import lapwright.paperwork.LayoutPaper;
import lapwright.paperwork.TicketPaper.Step;
import lapwright.paperwork.TicketPaper.Ticket;
import lapwright.plan.Cut;
import lapwright.shop.CutRules;

/**
 * Tickets that follow each other and are cut the same way, so that they are printed as one: each
 * piece of a run bears a mark of its own, and nothing else may differ.
 *
 * @param tickets at least one
 * @param number of the first of them, counted from 1 within its order
 * @param of how many tickets its order has
 */
record TicketGroup(List<Ticket> tickets, int number, int of) {
  TicketGroup {
    tickets = List.copyOf(tickets);
  }

  /**
   * The tickets in groups.
   *
   * @param ofOrder how many of the tickets each order has
   * @param layouts tell which pieces are of runs
   */
  static List<TicketGroup> of(List<Ticket> tickets, List<Integer> ofOrder, LayoutPaper layouts) {
    Set<String> runPieces = new HashSet<>();
    for (LayoutPaper.RunLayout layout : layouts.runs()) {
      for (LayoutPaper.Alike group : layout.groups()) {
        for (int line : group.lines()) {
          group
              .pieces()
              .forEach(piece -> runPieces.add(layout.job() + "/" + layout.pieceMark(line, piece)));
        }
      }
    }
    List<TicketGroup> groups = new ArrayList<>();
    int from = 0;
    for (int count : ofOrder) {
      for (int at = 0; at < count; ) {
        int end = at + 1;
        Ticket first = tickets.get(from + at);
        while (end < count
            && likeness(first).equals(likeness(tickets.get(from + end)))
            && differInRunsOnly(first, tickets.get(from + end), runPieces)) {
          end++;
        }
        groups.add(new TicketGroup(tickets.subList(from + at, from + end), at + 1, count));
        at = end;
      }
      from += count;
    }
    return groups;
  }

  private static boolean differInRunsOnly(Ticket one, Ticket other, Set<String> runPieces) {
    for (int step = 0; step < one.steps().size(); step++) {
      Cut cut = one.steps().get(step).cut();
      Cut its = other.steps().get(step).cut();
      if (!cut.equals(its) && !(isOfRun(cut, runPieces) && isOfRun(its, runPieces))) {
        return false;
      }
    }
    return true;
  }

  private static boolean isOfRun(Cut cut, Set<String> runPieces) {
    return runPieces.contains(cut.job() + "/" + cut.mark());
  }

  /** True when the pieces of a step are not the same on all of the tickets. */
  boolean isMarkedApart(int step) {
    Cut first = tickets.get(0).steps().get(step).cut();
    return tickets.stream().anyMatch(ticket -> !ticket.steps().get(step).cut().equals(first));
  }

  /** All that the operator goes by but the marks. */
  private record Likeness(
      String material, String saw, String supply, int sticks, List<CutLike> cuts, Length offcut) {}

  private record CutLike(Length length, int qty, CutRules rules) {}

  private static Likeness likeness(Ticket ticket) {
    return new Likeness(
        ticket.material().id(),
        ticket.saw().id(),
        ticket.supply().key(),
        ticket.sticks(),
        ticket.steps().stream()
            .map(Step::cut)
            .map(cut -> new CutLike(cut.length(), cut.qty(), cut.rules()))
            .toList(),
        ticket.offcut());
  }

  boolean isSingle() {
    return tickets.size() == 1;
  }

  /** {@code 7} or {@code 7 to 12}. */
  String name() {
    String first = tickets.get(0).name();
    return isSingle() ? first : first + " to " + tickets.get(tickets.size() - 1).name();
  }

  int sticks() {
    return tickets.stream().mapToInt(Ticket::sticks).sum();
  }

  int pieces() {
    return tickets.stream().mapToInt(ticket -> ticket.sticks() * ticket.pieces()).sum();
  }

  /**
   * All of them as one ticket, on which the pieces that differ in their marks bear none; itself
   * where it is one.
   */
  Ticket together() {
    Ticket first = tickets.get(0);
    if (isSingle()) {
      return first;
    }
    return new Ticket(
        name(),
        first.material(),
        first.saw(),
        first.supply(),
        sticks(),
        first.endTrim(),
        steps(),
        first.uncut(),
        first.longestLast(),
        first.shortestStick(),
        first.offcut(),
        first.kept(),
        first.offcutEnds(),
        tickets.stream().flatMap(ticket -> ticket.offcutNames().stream()).toList());
  }

  private List<Step> steps() {
    List<Step> steps = new ArrayList<>();
    for (int at = 0; at < tickets.get(0).steps().size(); at++) {
      Step step = tickets.get(0).steps().get(at);
      steps.add(isMarkedApart(at) ? new Step(unmarked(step.cut(), at), step.ends()) : step);
    }
    return steps;
  }

  private Cut unmarked(Cut cut, int step) {
    String jobs =
        tickets.stream()
            .map(ticket -> ticket.steps().get(step).cut().job())
            .distinct()
            .collect(Collectors.joining(", "));
    return new Cut(jobs, 1, "", cut.length(), cut.qty(), cut.rules(), cut.shorter());
  }

  /**
   * What is written on the pieces of each stick that differ in their marks, in the order in which
   * they are cut.
   */
  String marks() {
    boolean oneJob =
        tickets.stream()
                .flatMap(ticket -> ticket.steps().stream())
                .map(step -> step.cut().job())
                .distinct()
                .count()
            == 1;
    return tickets.stream()
        .map(
            ticket ->
                ticket.name()
                    + ": "
                    + IntStream.range(0, ticket.steps().size())
                        .filter(this::isMarkedApart)
                        .mapToObj(step -> ticket.steps().get(step).cut())
                        .map(cut -> cut.mark() + (oneJob ? "" : " " + cut.job()))
                        .collect(Collectors.joining(", ")))
        .collect(Collectors.joining("; "));
  }
}

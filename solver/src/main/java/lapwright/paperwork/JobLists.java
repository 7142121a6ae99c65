package lapwright.paperwork;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapwright.measure.Length;
import lapwright.paperwork.TicketPaper.FromTicket;
import lapwright.paperwork.TicketPaper.JobList;
import lapwright.paperwork.TicketPaper.PieceLine;
import lapwright.plan.Cut;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Pattern;
import lapwright.shop.Need;

/** For each copy of each job its pieces, and the tickets that they come from. */
final class JobLists {
  private JobLists() {}

  private record Key(String job, int copy, String mark, Length length) {
    static Key of(Cut cut) {
      return new Key(cut.job(), cut.copy(), cut.mark(), cut.length());
    }
  }

  static List<JobList> of(OrderPlan plan) {
    Map<String, Map<Integer, List<PieceLine>>> lines = new LinkedHashMap<>();
    for (MaterialPlan material : plan.materials()) {
      Map<Key, Map<String, Integer>> tickets = ticketsByPiece(material);
      for (Need need : alikeTogether(material.order().needs())) {
        for (int copy = 1; copy <= need.copies(); copy++) {
          Key key = new Key(need.job(), copy, need.mark(), need.length());
          List<FromTicket> from = new ArrayList<>();
          tickets
              .getOrDefault(key, Map.of())
              .forEach((ticket, qty) -> from.add(new FromTicket(ticket, qty)));
          lines
              .computeIfAbsent(need.job(), job -> new LinkedHashMap<>())
              .computeIfAbsent(copy, number -> new ArrayList<>())
              .add(
                  new PieceLine(
                      material.order().material(),
                      need.mark(),
                      need.length(),
                      need.qty(),
                      need.purpose(),
                      from));
        }
      }
    }
    List<JobList> lists = new ArrayList<>();
    for (Need job : OneNeedAJob.firstDueFirst(plan)) {
      lines
          .getOrDefault(job.job(), Map.of())
          .forEach(
              (copy, pieces) ->
                  lists.add(new JobList(job.job(), job.due(), copy, job.copies(), pieces)));
    }
    return lists;
  }

  /** Pieces that only their purpose tells apart cannot be told apart on a ticket. */
  private static List<Need> alikeTogether(List<Need> needs) {
    Map<Key, Need> alike = new LinkedHashMap<>();
    for (Need need : needs) {
      alike.merge(
          new Key(need.job(), 1, need.mark(), need.length()),
          need,
          (first, second) ->
              new Need(
                  first.job(),
                  first.due(),
                  first.copies(),
                  first.mark(),
                  first.length(),
                  Math.addExact(first.qty(), second.qty()),
                  joined(first.purpose(), second.purpose())));
    }
    return List.copyOf(alike.values());
  }

  private static String joined(String first, String second) {
    if (first.isEmpty() || first.equals(second)) {
      return second;
    }
    return second.isEmpty() ? first : first + ", " + second;
  }

  private static Map<Key, Map<String, Integer>> ticketsByPiece(MaterialPlan material) {
    Map<Key, Map<String, Integer>> tickets = new LinkedHashMap<>();
    for (Pattern pattern : material.patterns()) {
      for (Cut cut : pattern.cuts()) {
        tickets
            .computeIfAbsent(Key.of(cut), key -> new LinkedHashMap<>())
            .merge(
                pattern.ticket(), Math.multiplyExact(cut.qty(), pattern.times()), Math::addExact);
      }
    }
    return tickets;
  }
}

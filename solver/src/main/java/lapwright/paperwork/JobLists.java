package lapwright.paperwork;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.measure.Length;
import lapwright.paperwork.TicketPaper.FromTicket;
import lapwright.paperwork.TicketPaper.JobList;
import lapwright.paperwork.TicketPaper.PieceLine;
import lapwright.plan.Cut;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Pattern;
import lapwright.shop.CutRules;
import lapwright.shop.Material;
import lapwright.shop.Need;

/** For each copy of each job its pieces, and the tickets that they come from. */
final class JobLists {
  private JobLists() {}

  private record Key(String job, int copy, String mark, Length length, CutRules rules) {
    static Key of(Cut cut) {
      return new Key(cut.job(), cut.copy(), cut.mark(), cut.fullLength(), cut.rules());
    }
  }

  /** Pieces from each ticket, by how much shorter than asked for they are. */
  private static final class Source {
    private final SortedMap<Length, Map<String, Integer>> byShortness = new TreeMap<>();

    private void add(Cut cut, String ticket, int pieces) {
      byShortness
          .computeIfAbsent(cut.shorter(), shorter -> new LinkedHashMap<>())
          .merge(ticket, pieces, Math::addExact);
    }
  }

  static List<JobList> of(OrderPlan plan) {
    Map<String, Map<Integer, List<PieceLine>>> lines = new LinkedHashMap<>();
    for (MaterialPlan material : plan.materials()) {
      Map<Key, Source> sources = sources(material);
      for (Need need : alikeTogether(material.order().needs())) {
        for (int copy = 1; copy <= need.copies(); copy++) {
          Key key = new Key(need.job(), copy, need.mark(), need.length(), need.rules());
          Source source = sources.get(key);
          List<PieceLine> list =
              lines
                  .computeIfAbsent(need.job(), job -> new LinkedHashMap<>())
                  .computeIfAbsent(copy, number -> new ArrayList<>());
          if (source != null) {
            source.byShortness.forEach(
                (shorter, tickets) ->
                    list.add(line(material.order().material(), need, shorter, tickets)));
          }
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

  private static PieceLine line(
      Material material, Need need, Length shorter, Map<String, Integer> tickets) {
    List<FromTicket> from = new ArrayList<>();
    tickets.forEach((ticket, qty) -> from.add(new FromTicket(ticket, qty)));
    return new PieceLine(
        material,
        need.mark(),
        need.length().minus(shorter),
        from.stream().mapToInt(FromTicket::qty).sum(),
        need.rules(),
        shorter,
        need.purpose(),
        from);
  }

  /** Pieces that only their purpose tells apart cannot be told apart on a ticket. */
  private static List<Need> alikeTogether(List<Need> needs) {
    Map<Key, Need> alike = new LinkedHashMap<>();
    for (Need need : needs) {
      alike.merge(
          new Key(need.job(), 1, need.mark(), need.length(), need.rules()),
          need,
          (first, second) ->
              new Need(
                  first.job(),
                  first.due(),
                  first.copies(),
                  first.mark(),
                  first.length(),
                  Math.addExact(first.qty(), second.qty()),
                  joined(first.purpose(), second.purpose()),
                  first.rules()));
    }
    return List.copyOf(alike.values());
  }

  private static String joined(String first, String second) {
    if (first.isEmpty() || first.equals(second)) {
      return second;
    }
    return second.isEmpty() ? first : first + ", " + second;
  }

  private static Map<Key, Source> sources(MaterialPlan material) {
    Map<Key, Source> sources = new HashMap<>();
    for (Pattern pattern : material.patterns()) {
      for (Cut cut : pattern.cuts()) {
        sources
            .computeIfAbsent(Key.of(cut), key -> new Source())
            .add(cut, pattern.ticket(), Math.multiplyExact(cut.qty(), pattern.times()));
      }
    }
    return sources;
  }
}

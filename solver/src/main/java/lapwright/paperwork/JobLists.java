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

  /**
   * @param plans of one order, or of several that were placed one after the other
   */
  static List<JobList> of(List<MaterialPlan> plans) {
    Map<String, List<MaterialPlan>> byMaterial = new LinkedHashMap<>();
    for (MaterialPlan plan : plans) {
      byMaterial.computeIfAbsent(plan.material(), id -> new ArrayList<>()).add(plan);
    }
    Map<String, SortedMap<Integer, List<PieceLine>>> lines = new LinkedHashMap<>();
    for (List<MaterialPlan> ofMaterial : byMaterial.values()) {
      Map<Key, Source> tickets = new HashMap<>();
      Map<Key, String> pieces = new LinkedHashMap<>();
      for (MaterialPlan plan : ofMaterial) {
        addTickets(plan, tickets);
        addPieces(plan.order().needs(), pieces);
      }
      Material material = ofMaterial.get(0).order().material();
      pieces.forEach(
          (key, one) -> {
            List<PieceLine> list =
                lines
                    .computeIfAbsent(key.job(), job -> new TreeMap<>())
                    .computeIfAbsent(key.copy(), number -> new ArrayList<>());
            Source source = tickets.get(key);
            if (source != null) {
              source.byShortness.forEach(
                  (shorter, from) -> list.add(line(material, key, one, shorter, from)));
            }
          });
    }
    List<JobList> lists = new ArrayList<>();
    for (Need job : OneNeedAJob.firstDueFirst(plans)) {
      SortedMap<Integer, List<PieceLine>> copies = lines.get(job.job());
      if (copies != null) {
        copies.forEach(
            (copy, pieces) ->
                lists.add(new JobList(job.job(), job.due(), copy, job.lastCopy(), pieces)));
      }
    }
    return lists;
  }

  private static PieceLine line(
      Material material, Key key, String purpose, Length shorter, Map<String, Integer> tickets) {
    List<FromTicket> from = new ArrayList<>();
    tickets.forEach((ticket, qty) -> from.add(new FromTicket(ticket, qty)));
    return new PieceLine(
        material,
        key.mark(),
        key.length().minus(shorter),
        from.stream().mapToInt(FromTicket::qty).sum(),
        key.rules(),
        shorter,
        purpose,
        from);
  }

  /** Pieces that cannot be told apart on a ticket: only their purpose may differ. */
  private static void addPieces(List<Need> needs, Map<Key, String> pieces) {
    for (Need need : needs) {
      for (int copy = need.firstCopy(); copy <= need.lastCopy(); copy++) {
        pieces.merge(
            new Key(need.job(), copy, need.mark(), need.length(), need.rules()),
            need.purpose(),
            JobLists::joined);
      }
    }
  }

  private static String joined(String first, String second) {
    if (first.isEmpty() || first.equals(second)) {
      return second;
    }
    return second.isEmpty() ? first : first + ", " + second;
  }

  private static void addTickets(MaterialPlan material, Map<Key, Source> sources) {
    for (Pattern pattern : material.patterns()) {
      for (Cut cut : pattern.cuts()) {
        sources
            .computeIfAbsent(Key.of(cut), key -> new Source())
            .add(cut, pattern.ticket(), Math.multiplyExact(cut.qty(), pattern.times()));
      }
    }
  }
}

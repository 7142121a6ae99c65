package lapwright.paperwork;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import lapwright.measure.Length;
import lapwright.paperwork.TicketPaper.FromTicket;
import lapwright.paperwork.TicketPaper.ItemCount;
import lapwright.paperwork.TicketPaper.JobList;
import lapwright.paperwork.TicketPaper.PieceLine;
import lapwright.plan.Cut;
import lapwright.plan.ItemPlan;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Pattern;
import lapwright.plan.RunLine;
import lapwright.shop.CutRules;
import lapwright.shop.ItemOrder;
import lapwright.shop.Material;
import lapwright.shop.Need;
import lapwright.shop.RunNeed;

/**
 * For each copy of each job its pieces, and the tickets that they come from; and the counted goods
 * that go with it. Pieces of a run are listed under the run's mark, the longest first; how they are
 * laid is {@link LayoutPaper}'s.
 */
final class JobLists {
  private JobLists() {}

  private record Key(String job, int copy, String mark, Length length, CutRules rules) {
    static Key of(Cut cut) {
      return new Key(cut.job(), cut.copy(), cut.mark(), cut.fullLength(), cut.rules());
    }
  }

  private record RunKey(String job, int copy, String mark) {}

  /** Pieces from each ticket, by how much shorter than asked for they are. */
  private static final class Source {
    private final SortedMap<Length, Map<String, Integer>> byShortness = new TreeMap<>();

    private void add(Length shorter, String ticket, int pieces) {
      byShortness
          .computeIfAbsent(shorter, less -> new LinkedHashMap<>())
          .merge(ticket, pieces, Math::addExact);
    }
  }

  /**
   * @param orders one, or several that were placed one after the other
   */
  static List<JobList> of(List<OrderPlan> orders) {
    Map<String, List<MaterialPlan>> byMaterial = new LinkedHashMap<>();
    for (OrderPlan order : orders) {
      for (MaterialPlan plan : order.materials()) {
        byMaterial.computeIfAbsent(plan.material(), id -> new ArrayList<>()).add(plan);
      }
    }
    Map<String, SortedMap<Integer, List<PieceLine>>> lines = new LinkedHashMap<>();
    for (List<MaterialPlan> ofMaterial : byMaterial.values()) {
      Map<Key, Source> tickets = new HashMap<>();
      Map<RunKey, SortedMap<Length, Source>> ofRuns = new HashMap<>();
      Map<Key, String> pieces = new LinkedHashMap<>();
      Map<RunKey, String> runs = new LinkedHashMap<>();
      for (MaterialPlan plan : ofMaterial) {
        addTickets(plan, tickets, ofRuns);
        addPieces(plan.order().needs(), pieces);
        addRuns(plan.order().runs(), runs);
      }
      Material material = ofMaterial.get(0).order().material();
      pieces.forEach(
          (key, purpose) -> {
            List<PieceLine> list = list(lines, key.job(), key.copy());
            Source source = tickets.get(key);
            if (source != null) {
              source.byShortness.forEach(
                  (shorter, from) -> list.add(line(material, key, purpose, shorter, from)));
            }
          });
      runs.forEach(
          (key, purpose) -> {
            List<PieceLine> list = list(lines, key.job(), key.copy());
            ofRuns
                .getOrDefault(key, new TreeMap<>())
                .forEach(
                    (length, source) ->
                        source.byShortness.forEach(
                            (shorter, from) ->
                                list.add(
                                    line(
                                        material,
                                        new Key(
                                            key.job(),
                                            key.copy(),
                                            key.mark(),
                                            length,
                                            CutRules.PLAIN),
                                        purpose,
                                        shorter,
                                        from))));
          });
    }
    Map<String, SortedMap<Integer, SortedMap<String, Integer>>> items = items(orders);
    List<JobList> lists = new ArrayList<>();
    for (PlannedJob job : PlannedJob.firstDueFirst(orders)) {
      SortedMap<Integer, List<PieceLine>> pieces =
          lines.getOrDefault(job.job(), Collections.emptySortedMap());
      SortedMap<Integer, SortedMap<String, Integer>> counted =
          items.getOrDefault(job.job(), Collections.emptySortedMap());
      SortedSet<Integer> copies = new TreeSet<>(pieces.keySet());
      copies.addAll(counted.keySet());
      for (int copy : copies) {
        List<ItemCount> toPack = new ArrayList<>();
        counted
            .getOrDefault(copy, Collections.emptySortedMap())
            .forEach((item, qty) -> toPack.add(new ItemCount(item, qty)));
        lists.add(
            new JobList(
                job.job(),
                job.due(),
                copy,
                job.copies(),
                pieces.getOrDefault(copy, List.of()),
                toPack));
      }
    }
    return lists;
  }

  private static List<PieceLine> list(
      Map<String, SortedMap<Integer, List<PieceLine>>> lines, String job, int copy) {
    return lines
        .computeIfAbsent(job, name -> new TreeMap<>())
        .computeIfAbsent(copy, number -> new ArrayList<>());
  }

  /** By job, copy and item; what a later order took back is taken off. */
  private static Map<String, SortedMap<Integer, SortedMap<String, Integer>>> items(
      List<OrderPlan> orders) {
    Map<String, SortedMap<Integer, SortedMap<String, Integer>>> items = new LinkedHashMap<>();
    for (OrderPlan order : orders) {
      for (ItemPlan plan : order.items()) {
        for (ItemOrder.Need need : plan.order().needs()) {
          for (int copy = need.firstCopy(); copy <= need.lastCopy(); copy++) {
            items
                .computeIfAbsent(need.job(), job -> new TreeMap<>())
                .computeIfAbsent(copy, number -> new TreeMap<>())
                .merge(plan.item(), need.qty(), Math::addExact);
          }
        }
      }
    }
    items.values().forEach(copies -> copies.values().forEach(JobLists::withoutNothing));
    items.values().forEach(copies -> copies.values().removeIf(Map::isEmpty));
    return items;
  }

  private static void withoutNothing(Map<String, Integer> counts) {
    counts.values().removeIf(qty -> qty == 0);
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

  private static void addRuns(List<RunNeed> needs, Map<RunKey, String> runs) {
    for (RunNeed need : needs) {
      for (int copy = need.firstCopy(); copy <= need.lastCopy(); copy++) {
        runs.merge(
            new RunKey(need.job(), copy, need.run().mark()),
            need.run().purpose(),
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

  private static void addTickets(
      MaterialPlan plan, Map<Key, Source> sources, Map<RunKey, SortedMap<Length, Source>> ofRuns) {
    Map<String, String> runOfPiece = new HashMap<>();
    for (RunLine line : plan.runs()) {
      line.pieces()
          .forEach(piece -> runOfPiece.put(line.job() + "/" + line.pieceMark(piece), line.mark()));
    }
    for (Pattern pattern : plan.patterns()) {
      for (Cut cut : pattern.cuts()) {
        String run = runOfPiece.get(cut.job() + "/" + cut.mark());
        Source source =
            run == null
                ? sources.computeIfAbsent(Key.of(cut), key -> new Source())
                : ofRuns
                    .computeIfAbsent(
                        new RunKey(cut.job(), cut.copy(), run),
                        key -> new TreeMap<>(Comparator.reverseOrder()))
                    .computeIfAbsent(cut.fullLength(), length -> new Source());
        source.add(cut.shorter(), pattern.ticket(), Math.multiplyExact(cut.qty(), pattern.times()));
      }
    }
  }
}

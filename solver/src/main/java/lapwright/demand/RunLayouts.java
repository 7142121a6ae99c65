package lapwright.demand;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import lapwright.layout.StretchSplits.Place;
import lapwright.measure.Length;
import lapwright.plan.Account;
import lapwright.plan.Cut;
import lapwright.plan.LengthPattern;
import lapwright.plan.Pattern;
import lapwright.plan.Purchase;
import lapwright.plan.RunLine;
import lapwright.plan.RunLine.RunPiece;
import lapwright.shop.JointRules.Joint;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.Supply;

/**
 * The pieces of all runs as needs of an order, and back: once tickets are made, pieces at butt
 * joints get back what their sticks can spare of the gaps, and every line is laid with its pieces
 * as they are cut.
 */
public final class RunLayouts {
  private final MaterialOrder order;
  private final List<PlannedLine> lines;
  private final Map<PieceName, PieceOfLine> pieces = new HashMap<>();
  private final MaterialOrder withPieces;

  private record PieceName(String job, String mark) {}

  private record PieceOfLine(PlannedLine line, int number, Place place) {}

  /** Tickets as they are cut and lines as they are laid. */
  public record Finished(List<Pattern> tickets, List<RunLine> runs) {
    public Finished {
      tickets = List.copyOf(tickets);
      runs = List.copyOf(runs);
    }
  }

  /**
   * @param plain the needs that are no runs, all of the order's or a part of them
   * @param lines the lines that are planned with them
   */
  public RunLayouts(MaterialOrder order, List<Need> plain, List<PlannedLine> lines) {
    this.order = order;
    this.lines = List.copyOf(lines);
    List<Need> needs = new ArrayList<>(plain);
    Map<String, Integer> last = new TreeMap<>();
    for (PlannedLine line : lines) {
      String lineKey = line.run() + "/" + line.line();
      for (Place place : line.places()) {
        int number = last.merge(lineKey, 1, Integer::sum);
        String mark = line.need().pieceMark(line.line(), number);
        pieces.put(new PieceName(line.need().job(), mark), new PieceOfLine(line, number, place));
        needs.add(
            new Need(
                line.need().job(),
                line.need().due(),
                1,
                mark,
                Length.ofUnits(place.length()),
                1,
                line.need().run().purpose()));
      }
    }
    this.withPieces = order.withPieces(needs);
  }

  /** The order with the pieces of its runs as needs. */
  public MaterialOrder withPieces() {
    return withPieces;
  }

  /** True when a piece must be all that its stick gives, uncut. */
  public boolean isWhole(Need need) {
    PieceOfLine piece = pieces.get(new PieceName(need.job(), need.mark()));
    return piece != null && piece.line().isWhole(piece.place());
  }

  /** True when a stick gives one piece, and that is all it gives. */
  public boolean isWhole(LengthPattern pattern) {
    return pattern.counts().equals(Map.of(pattern.counts().firstKey(), 1))
        && stick(pattern.supply()).usable() == pattern.counts().firstKey().units();
  }

  /** Tickets as they are cut, and lines as they are laid. */
  public Finished finish(List<Pattern> tickets) {
    Map<PieceName, Long> cut = new HashMap<>();
    List<Pattern> grown = new ArrayList<>();
    for (Pattern ticket : tickets) {
      grown.add(grow(ticket, cut));
    }
    List<RunLine> laid = new ArrayList<>();
    Map<String, Integer> last = new TreeMap<>();
    for (PlannedLine line : lines) {
      String lineKey = line.run() + "/" + line.line();
      List<RunPiece> inOrder = new ArrayList<>();
      for (Place place : line.places()) {
        int number = last.merge(lineKey, 1, Integer::sum);
        PieceName name =
            new PieceName(line.need().job(), line.need().pieceMark(line.line(), number));
        inOrder.add(piece(number, place, Objects.requireNonNull(cut.get(name))));
      }
      laid.add(
          new RunLine(
              line.need().job(),
              line.copy(),
              line.need().run().mark(),
              line.line(),
              line.closingAt(),
              inOrder));
    }
    return new Finished(grown, laid);
  }

  /** A piece that is shorter than its place gives the rest to the gaps at its inner ends. */
  private static RunPiece piece(int number, Place place, long length) {
    long given = place.end() - place.start() - length;
    long atStart = place.first() ? 0 : place.last() ? given : given / 2;
    return new RunPiece(number, Length.ofUnits(place.start() + atStart), Length.ofUnits(length));
  }

  private Pattern grow(Pattern ticket, Map<PieceName, Long> cut) {
    long spare = spare(ticket);
    long wanted = 0;
    for (Cut each : ticket.cuts()) {
      PieceOfLine piece = pieces.get(new PieceName(each.job(), each.mark()));
      wanted += piece == null ? 0 : mayGrow(piece);
    }
    long given = Math.min(spare, wanted);
    long grownBy = 0;
    List<Cut> cuts = new ArrayList<>();
    for (Cut each : ticket.cuts()) {
      PieceName name = new PieceName(each.job(), each.mark());
      PieceOfLine piece = pieces.get(name);
      if (piece == null) {
        cuts.add(each);
        continue;
      }
      // In proportion to what each may grow, rounded down, so that equal pieces stay equal.
      long more = wanted == 0 ? 0 : Math.multiplyExact(given, mayGrow(piece)) / wanted;
      grownBy += more;
      Length length = each.length().plus(Length.ofUnits(more));
      cut.put(name, length.units());
      cuts.add(new Cut(each.job(), piece.line().copy(), each.mark(), length, each.qty()));
    }
    return new Pattern(
        ticket.ticket(),
        ticket.supply(),
        ticket.times(),
        cuts,
        offcutAfter(ticket, grownBy),
        ticket.offcutNames());
  }

  private static long mayGrow(PieceOfLine piece) {
    Length longest = piece.line().need().run().rules().pieces().longest();
    long may = piece.place().mayGrow();
    return longest == null ? may : Math.min(may, longest.units() - piece.place().length());
  }

  /** What the pieces of a ticket may grow together: an offcut that is kept stays kept. */
  private long spare(Pattern ticket) {
    UsableStick stick = stick(ticket.supply());
    long hold = order.saw().hold().units();
    boolean held = ticket.cuts().stream().anyMatch(each -> each.held().units() >= hold);
    if (!ticket.offcutNames().isEmpty()) {
      long keep = Math.max(1, order.material().keepOffcutsFrom().units());
      return Math.max(0, ticket.offcut().units() - (held ? keep : Math.max(keep, hold)));
    }
    return held ? stick.capacity() - sizes(ticket) : Math.max(0, ticket.offcut().units() - hold);
  }

  private Length offcutAfter(Pattern ticket, long grownBy) {
    return Length.ofUnits(stick(ticket.supply()).offcut(sizes(ticket) + grownBy));
  }

  private long sizes(Pattern ticket) {
    long sizes = 0;
    for (Cut each : ticket.cuts()) {
      Length cut = each.rules().cutWidth(order.saw().kerf());
      sizes += each.length().plus(cut).units() * each.qty();
    }
    return sizes;
  }

  private UsableStick stick(String key) {
    Supply supply =
        order.supplies().stream().filter(one -> one.key().equals(key)).findFirst().orElseThrow();
    return UsableStick.of(order.material(), order.saw(), supply);
  }

  /** Where the material of an order with runs goes. */
  public static Account account(
      MaterialOrder order, List<Pattern> tickets, List<Purchase> purchases, List<RunLine> runs) {
    Account account = new StickAccount(order).of(tickets, purchases);
    Map<PieceName, Joint> joints = new HashMap<>();
    order
        .runs()
        .forEach(
            need ->
                joints.put(
                    new PieceName(need.job(), need.run().mark()), need.run().rules().joint()));
    long laps = 0;
    for (RunLine line : runs) {
      if (joints.get(new PieceName(line.job(), line.mark())) instanceof Joint.Lap lap) {
        laps =
            Math.addExact(laps, Math.multiplyExact(lap.lap().units(), line.pieces().size() - 1L));
      }
    }
    Length overlaps = Length.ofUnits(laps);
    return new Account(
        account.drawn(),
        account.finished().minus(overlaps),
        overlaps,
        account.kerf(),
        account.endTrim(),
        account.offcutsKept(),
        account.scrap(),
        account.surplus(),
        account.shortAllowance());
  }
}

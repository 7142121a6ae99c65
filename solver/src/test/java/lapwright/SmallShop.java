package lapwright;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.random.RandomGenerator;
import lapwright.measure.Length;
import lapwright.measure.Price;
import lapwright.shop.Ends;
import lapwright.shop.JointPlaces;
import lapwright.shop.JointRules;
import lapwright.shop.JointRules.ClosingPiece;
import lapwright.shop.JointRules.JointCount;
import lapwright.shop.JointRules.Where;
import lapwright.shop.Need;
import lapwright.shop.OneLotPer;
import lapwright.shop.Saw;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/**
 * A small shop with runs in whole inches, said twice: as the order that the planner gets, and as
 * the plain numbers from which models that share nothing with it are made. Mill ends are good,
 * nothing is held, and pieces come in steps of an inch, so that the grid of inches is all there is.
 *
 * @param kerf in inches
 */
record SmallShop(
    int kerf, OneLotPer oneLotPer, List<Stick> sticks, List<Piece> pieces, List<Line> lines) {
  static final int NO_LIMIT = Integer.MAX_VALUE;

  SmallShop {
    sticks = List.copyOf(sticks);
    pieces = List.copyOf(pieces);
    lines = List.copyOf(lines);
  }

  /**
   * Equal sticks.
   *
   * @param lot the supplier's name, or the lot of an offcut
   * @param price dollars a stick; 0 for an offcut
   * @param most sticks; {@link #NO_LIMIT} without a limit
   */
  record Stick(String lot, int length, int price, int packSize, int most) {
    boolean isOffcut() {
      return price == 0;
    }

    int mostPacks() {
      return most == NO_LIMIT ? NO_LIMIT : most / packSize;
    }
  }

  record Piece(String job, int length, int qty) {}

  /**
   * A run.
   *
   * @param lap 0 for butt joints
   * @param places where joints may stand; null anywhere
   * @param most joints outright; less than 0 for so many beyond the fewest: -1 for none, -2 for one
   */
  record Line(
      String job,
      int qty,
      int length,
      int lap,
      @Nullable List<Integer> places,
      int shortest,
      int most) {
    Line at(@Nullable List<Integer> others) {
      return new Line(job, qty, length, lap, others, shortest, most);
    }

    Line lapped(int other) {
      return new Line(job, qty, length, other, places, shortest, most);
    }

    Line atMost(int joints) {
      return new Line(job, qty, length, lap, places, shortest, joints);
    }

    /** What k pieces add up to. */
    int sumOf(int pieces) {
      return length + (pieces - 1) * lap;
    }
  }

  SmallShop withLines(List<Line> others) {
    return new SmallShop(kerf, oneLotPer, sticks, pieces, others);
  }

  int longest() {
    return sticks.stream().filter(s -> s.mostPacks() > 0).mapToInt(Stick::length).max().orElse(0);
  }

  private int longestForCount() {
    return sticks.stream()
        .filter(stick -> stick.most() == NO_LIMIT)
        .mapToInt(Stick::length)
        .max()
        .orElse(longest());
  }

  /** What must come from one lot: the pieces and runs of a job, or a run. */
  String unitOf(Line line) {
    return switch (oneLotPer) {
      case NONE -> "all";
      case JOB -> line.job();
      case RUN -> line.job() + ", run " + lines.indexOf(line);
    };
  }

  /** The same for plain pieces; empty where they may come from several. */
  String unitOf(Piece piece) {
    return switch (oneLotPer) {
      case NONE -> "all";
      case JOB -> piece.job();
      case RUN -> "";
    };
  }

  /** All lots; one where they may mix. */
  List<String> lots() {
    return oneLotPer == OneLotPer.NONE
        ? List.of("all")
        : sticks.stream().filter(s -> s.mostPacks() > 0).map(Stick::lot).distinct().toList();
  }

  boolean isOf(Stick stick, String lot) {
    return stick.mostPacks() > 0 && (oneLotPer == OneLotPer.NONE || stick.lot().equals(lot));
  }

  /** Most pieces that a line may have; 0 when no number of them will do. */
  int mostPieces(Line line) {
    int fewest = 1;
    while (splits(line, fewest, longestForCount()).isEmpty()) {
      if (++fewest > line.length()) {
        return 0;
      }
    }
    if (line.most() >= 0) {
      return line.most() + 1 < fewest ? 0 : line.most() + 1;
    }
    return fewest - 1 - line.most();
  }

  /** Every permitted split of a line, its pieces sorted. */
  List<List<Integer>> splits(Line line) {
    List<List<Integer>> all = new ArrayList<>();
    for (int k = 1; k <= mostPieces(line); k++) {
      all.addAll(splits(line, k, longest()));
    }
    return all;
  }

  private static List<List<Integer>> splits(Line line, int pieces, int longest) {
    List<List<Integer>> found = new ArrayList<>();
    List<Integer> places = line.places();
    if (places == null) {
      share(line, pieces, line.sumOf(pieces), line.shortest(), longest, new ArrayList<>(), found);
    } else {
      lay(line, places, pieces, 0, 0, longest, new ArrayList<>(), found);
    }
    return found.stream().distinct().toList();
  }

  private static void share(
      Line line,
      int pieces,
      int left,
      int least,
      int longest,
      List<Integer> laid,
      List<List<Integer>> found) {
    for (int length = pieces == 1 ? left : Math.max(1, least);
        length <= longest && length * pieces <= left;
        length++) {
      if (length >= Math.max(1, least)) {
        laid.add(length);
        if (pieces == 1) {
          found.add(List.copyOf(laid));
        } else {
          share(line, pieces - 1, left - length, length, longest, laid, found);
        }
        laid.remove(laid.size() - 1);
      }
    }
  }

  /** Laps are centred on their places; the last place that was used is {@code from}. */
  private static void lay(
      Line line,
      List<Integer> places,
      int pieces,
      int next,
      int from,
      int longest,
      List<Integer> laid,
      List<List<Integer>> found) {
    int start = laid.isEmpty() ? 0 : from - line.lap() / 2;
    for (int p = next; p <= places.size(); p++) {
      boolean last = p == places.size();
      int end = last ? line.length() : places.get(p) + line.lap() / 2;
      if (last != (pieces == 1) || end - start < line.shortest() || end - start > longest) {
        continue;
      }
      laid.add(end - start);
      if (last) {
        found.add(laid.stream().sorted().toList());
      } else {
        lay(line, places, pieces - 1, p + 1, places.get(p), longest, laid, found);
      }
      laid.remove(laid.size() - 1);
    }
  }

  /** True when all pieces but one are what whole sticks of the lot give. */
  boolean isWholeButOne(List<Integer> split, String lot) {
    Predicate<Integer> cut =
        length -> sticks.stream().noneMatch(s -> isOf(s, lot) && s.length() == length);
    return split.stream().filter(cut).count() <= 1;
  }

  /** What the theorem about whole sticks and one closing piece asks for. */
  boolean wholeSticksLoseNothing(Line line) {
    int k = mostPieces(line);
    return line.places() == null
        && k > 0
        && line.sumOf(k) - (k - 1) * longest() >= Math.max(1, line.shortest());
  }

  /** The order that the planner gets. */
  RunShop order(boolean fullSticks) {
    RunShop shop = new RunShop();
    shop.oneLotPer = oneLotPer;
    shop.saw = new Saw("saw", RunShop.inches(kerf), Length.ZERO, Length.ZERO, null);
    for (int j = 0; j < sticks.size(); j++) {
      Stick stick = sticks.get(j);
      Length length = RunShop.inches(stick.length());
      shop.supplies.add(
          stick.isOffcut()
              ? new Supply.RackOffcut("R" + j, length, Ends.SAWN, "", stick.lot())
              : new Supply.Offer(
                  stick.lot(),
                  length,
                  new Price(new BigDecimal(stick.price()), Price.Per.EACH),
                  stick.packSize(),
                  stick.most(),
                  "",
                  null,
                  null));
    }
    for (int i = 0; i < pieces.size(); i++) {
      Piece piece = pieces.get(i);
      Length length = RunShop.inches(piece.length());
      shop.needs.add(new Need(piece.job(), null, 1, "P" + i, length, piece.qty(), ""));
    }
    for (int r = 0; r < lines.size(); r++) {
      Line line = lines.get(r);
      JointRules rules = rules(line);
      shop.run(
          line.job(),
          "T" + r,
          line.qty(),
          RunShop.inches(line.length()),
          fullSticks ? rules.with(new ClosingPiece(Where.END, true, Length.ZERO)) : rules);
    }
    return shop;
  }

  private static JointRules rules(Line line) {
    JointRules.Joint joint =
        line.lap() == 0
            ? new JointRules.Joint.Butt(Length.ZERO)
            : new JointRules.Joint.Lap(RunShop.inches(line.lap()));
    Length inch = RunShop.inches(1);
    JointRules rules =
        JointRules.of(joint, inch)
            .with(new JointRules.Pieces(RunShop.inches(line.shortest()), null, null, inch))
            .with(
                line.most() >= 0
                    ? new JointCount.AtMost(line.most())
                    : new JointCount.BeyondFewest(-1 - line.most()));
    List<Integer> places = line.places();
    return places == null
        ? rules
        : rules.at(new JointPlaces.At(places.stream().map(RunShop::inches).toList()));
  }

  /** A shop with all that runs can meet. */
  static SmallShop random(RandomGenerator random, OneLotPer oneLotPer) {
    Map<String, Stick> sticks = new TreeMap<>();
    for (int j = 1 + random.nextInt(3); j > 0; j--) {
      int length = 9 + random.nextInt(7);
      String lot = random.nextBoolean() ? "pellbrook" : "ostermoor";
      int packSize = random.nextInt(4) == 0 ? 2 + random.nextInt(2) : 1;
      int most = sticks.isEmpty() || random.nextInt(3) > 0 ? NO_LIMIT : 1 + random.nextInt(4);
      sticks.putIfAbsent(
          lot + length, new Stick(lot, length, length + random.nextInt(4), packSize, most));
    }
    for (int j = random.nextInt(3); j > 0; j--) {
      sticks.put("R" + j, new Stick("spring", 4 + random.nextInt(12), 0, 1, 1));
    }
    int longest =
        sticks.values().stream()
            .filter(stick -> stick.most() == NO_LIMIT)
            .mapToInt(Stick::length)
            .max()
            .orElseThrow();
    List<String> jobs = List.of("A", "B");
    List<Piece> pieces = new ArrayList<>();
    for (int i = random.nextInt(3); i > 0; i--) {
      pieces.add(
          new Piece(
              jobs.get(random.nextInt(2)), 2 + random.nextInt(longest - 2), 1 + random.nextInt(3)));
    }
    List<Line> lines = new ArrayList<>();
    for (int i = 1 + random.nextInt(2); i > 0; i--) {
      int length = 6 + random.nextInt(30);
      TreeSet<Integer> places = new TreeSet<>();
      for (int at = 2 + random.nextInt(3); at < length - 1; at += 2 + random.nextInt(4)) {
        places.add(at);
      }
      lines.add(
          new Line(
              jobs.get(random.nextInt(2)),
              1 + random.nextInt(3),
              length,
              2 * random.nextInt(2),
              random.nextInt(5) < 2 ? List.copyOf(places) : null,
              1 + random.nextInt(3),
              random.nextInt(3) == 0 ? -2 : -1));
    }
    return new SmallShop(
        random.nextInt(3) == 0 ? 1 : 0, oneLotPer, List.copyOf(sticks.values()), pieces, lines);
  }

  @Override
  public String toString() {
    return "kerf "
        + kerf
        + ", one lot per "
        + oneLotPer
        + "\n  "
        + String.join("\n  ", sticks.stream().map(Objects::toString).toList())
        + "\n  "
        + String.join("\n  ", pieces.stream().map(Objects::toString).toList())
        + "\n  "
        + String.join("\n  ", Arrays.stream(lines.toArray()).map(Objects::toString).toList());
  }
}

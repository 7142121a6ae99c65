package lapwright.splice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.LongPredicate;
import lapwright.effort.Effort;
import lapwright.problem.SpliceProblem;
import lapwright.problem.SpliceProblem.Closing;
import lapwright.problem.SpliceProblem.Group;
import lapwright.problem.SpliceProblem.Splits.Anywhere;
import lapwright.problem.SpliceSolution.Split;
import lapwright.problem.StickProblem.Stock;
import lapwright.splice.ClassMaster.Cutting;
import org.jspecify.annotations.Nullable;

/**
 * Local search over splits and sticks together: a few sticks are taken back, and what they held is
 * cut anew, lines with joints anywhere wherever it suits ({@link Refill}), from the same sticks or
 * from others (large neighbourhood search, P. Shaw, 1998). What helps is less money or, for the
 * same, that what is left over lies together on few sticks, until a shorter stick or one stick less
 * will do.
 *
 * <p>Lines of other kinds stay as they are split.
 */
final class Recut {
  private static final int MOST_SAVED = 2;
  private static final int PURCHASES = 12;
  private static final int TRIALS = 3;
  private static final int LEAST_STICKS = 2;
  private static final int MORE_STICKS = 5;
  private static final int COOLED_A_STICK = 100;
  private static final double JOINT = 0.8;
  private static final double LITTLE = 0.05;
  private static final double WARMEST = 0.01;

  private final SpliceProblem problem;
  private final Draws draws = new Draws();
  private final Refill refill;
  private final List<List<Split>> fixed = new ArrayList<>();
  private final List<Line> lines = new ArrayList<>();
  private final List<Stick> sticks = new ArrayList<>();
  private final int[] counts;
  private final Set<Long> wholes = new HashSet<>();
  private final double perSize;
  private final double dearest;
  private final long longestUsable;

  /** A line that may be cut anywhere, and the sticks that its pieces come from. */
  private static final class Line {
    private final int number;
    private final int group;
    private final Anywhere rules;
    private final long longestUsable;

    /** A stick for each piece. */
    private final List<Stick> on = new ArrayList<>();

    private Line(int number, int group, Anywhere rules, long longestUsable) {
      this.number = number;
      this.group = group;
      this.rules = rules;
      this.longestUsable = longestUsable;
    }

    /** As it is without the pieces of sticks that are taken back. */
    private OpenLine open() {
      int settled = 0;
      long length = 0;
      for (Stick stick : new LinkedHashSet<>(on)) {
        for (Refill.Piece piece : stick.held) {
          if (!stick.taken && piece.line() == number) {
            settled++;
            length += piece.length();
          }
        }
      }
      return new OpenLine(rules, longestUsable, settled, length);
    }
  }

  private static final class Stick {
    private final int stock;
    private final List<Refill.Piece> held;
    private boolean taken;

    private Stick(int stock, List<Refill.Piece> held) {
      this.stock = stock;
      this.held = held;
    }
  }

  /** Splits of all lines, and the sticks that hold all pieces. */
  record Found(List<List<Split>> splits, List<Cutting> sticks) {}

  private Recut(SpliceProblem problem) {
    this.problem = problem;
    refill = new Refill(problem, draws);
    counts = new int[problem.stocks().size()];
    double least = Double.POSITIVE_INFINITY;
    double most = 1;
    for (Stock stock : problem.stocks()) {
      double price = (double) stock.packCost() / stock.packSize();
      if (price > 0 && stock.capacity() > 0) {
        least = Math.min(least, price / stock.capacity());
      }
      most = Math.max(most, price);
      wholes.add(stock.capacity() - problem.cut());
    }
    perSize = Double.isInfinite(least) ? 0 : least;
    dearest = most;
    longestUsable = problem.longestUsable();
  }

  /** True where some lines may be cut wherever it suits, and no piece must stay uncut. */
  static boolean isFor(SpliceProblem problem) {
    return problem.groups().stream().anyMatch(Recut::isFree)
        && problem.groups().stream().allMatch(group -> group.splits().closing() == Closing.ANY_CUT);
  }

  /** True when lines of a group may have more joints than they need. */
  static boolean hasSpareJoints(SpliceProblem problem, Group group) {
    return group.splits() instanceof Anywhere rules
        && new OpenLine(rules, problem.longestUsable(), 0, 0).fewest() < rules.mostPieces();
  }

  private static boolean isFree(Group group) {
    return group.apart() == 0 && group.splits() instanceof Anywhere;
  }

  /**
   * A solution that costs less; null when none was found.
   *
   * @param splits of the solution to begin from
   * @param cuttings its sticks, which hold the pieces of those splits and the plain ones
   * @param coolings how often to begin with much, and to end with nothing, that may be lost for a
   *     while
   * @param enough tells whether a cost is low enough to stop
   */
  static @Nullable Found from(
      SpliceProblem problem,
      List<List<Split>> splits,
      List<Cutting> cuttings,
      int coolings,
      LongPredicate enough,
      Effort effort) {
    Recut recut = new Recut(problem);
    recut.begin(splits, cuttings);
    return recut.search(coolings, enough, effort);
  }

  private void begin(List<List<Split>> splits, List<Cutting> cuttings) {
    Map<Long, List<Integer>> owners = new HashMap<>();
    for (int g = 0; g < splits.size(); g++) {
      Group group = problem.groups().get(g);
      fixed.add(isFree(group) ? List.of() : splits.get(g));
      if (!isFree(group)) {
        continue;
      }
      for (Split split : splits.get(g)) {
        for (int i = 0; i < split.lines(); i++) {
          int number = lines.size();
          lines.add(new Line(number, g, (Anywhere) group.splits(), longestUsable));
          split
              .lengths()
              .forEach(
                  length -> owners.computeIfAbsent(length, key -> new ArrayList<>()).add(number));
        }
      }
    }
    for (Cutting cutting : cuttings) {
      List<Refill.Piece> held = new ArrayList<>();
      for (long length : cutting.lengths()) {
        List<Integer> owner = owners.getOrDefault(length, List.of());
        int line = owner.isEmpty() ? -1 : owner.remove(owner.size() - 1);
        held.add(new Refill.Piece(line, length));
      }
      put(new Stick(cutting.stock(), held));
    }
  }

  private void put(Stick stick) {
    sticks.add(stick);
    counts[stick.stock]++;
    for (Refill.Piece piece : stick.held) {
      if (piece.line() >= 0) {
        lines.get(piece.line()).on.add(stick);
      }
    }
  }

  private void takeBack(Stick stick) {
    counts[stick.stock]--;
    for (Refill.Piece piece : stick.held) {
      if (piece.line() >= 0) {
        lines.get(piece.line()).on.remove(stick);
      }
    }
  }

  private long cost(int[] numbers) {
    long cost = 0;
    for (int j = 0; j < numbers.length; j++) {
      Stock stock = problem.stocks().get(j);
      long packs = ((long) numbers[j] + stock.packSize() - 1) / stock.packSize();
      cost += packs * stock.packCost();
    }
    return cost;
  }

  private @Nullable Found search(int coolings, LongPredicate enough, Effort effort) {
    long best = cost(counts);
    Found found = null;
    int cooled = COOLED_A_STICK * sticks.size();
    int rounds = coolings * cooled;
    for (int r = 0; r < rounds && !effort.spent(); r++) {
      double warm = 1 - (double) (r % cooled) / cooled;
      List<Stick> chosen = chosen();
      round(chosen, WARMEST * warm * warm * dearest);
      chosen.forEach(stick -> stick.taken = false);
      long now = cost(counts);
      if (now < best) {
        best = now;
        found = found();
        if (enough.test(best)) {
          break;
        }
      }
    }
    return found;
  }

  /** Sticks that are taken back, and what they held. */
  private final class Opened {
    private final List<Stick> taken;
    private final List<Refill.Piece> pieces = new ArrayList<>();
    private final List<OpenLine> open = new ArrayList<>();
    private final List<Integer> numbers = new ArrayList<>();
    private final int[] others = counts.clone();
    private final double worth;
    private final long needed;
    private final boolean canBeCut;

    private Opened(List<Stick> taken) {
      this.taken = taken;
      Set<Integer> seen = new HashSet<>();
      double credit = 0;
      long size = 0;
      for (Stick stick : taken) {
        others[stick.stock]--;
        credit += credit(stick.stock, stick.held);
        for (Refill.Piece piece : stick.held) {
          credit -= joint(piece.line());
          if (piece.line() < 0) {
            pieces.add(piece);
            size += piece.length() + problem.cut();
          } else if (seen.add(piece.line())) {
            numbers.add(piece.line());
            open.add(lines.get(piece.line()).open());
          }
        }
      }
      boolean all = true;
      for (OpenLine line : open) {
        int fewest = line.fewest();
        all &= fewest > 0;
        size += fewest < 0 ? 0 : line.rest(fewest) + fewest * problem.cut();
      }
      worth = cost(counts) - credit;
      needed = size;
      canBeCut = all;
    }

    /** What it is worth when it is cut so; the less the better. */
    private double worth(int[] stocks, List<List<Refill.Piece>> held) {
      int[] all = others.clone();
      double after = 0;
      for (int s = 0; s < stocks.length; s++) {
        if (!held.get(s).isEmpty()) {
          all[stocks[s]]++;
          after -= credit(stocks[s], held.get(s));
          for (Refill.Piece piece : held.get(s)) {
            after += piece.line() < 0 ? 0 : joint(numbers.get(piece.line()));
          }
        }
      }
      return after + cost(all);
    }

    /** True when all pieces of each line but one are in its steps, whole sticks left out. */
    private boolean keepsSteps(List<List<Refill.Piece>> held) {
      int[] off = new int[open.size()];
      for (int i = 0; i < off.length; i++) {
        Line line = lines.get(numbers.get(i));
        for (Stick stick : new LinkedHashSet<>(line.on)) {
          for (Refill.Piece piece : stick.taken ? List.<Refill.Piece>of() : stick.held) {
            boolean own = piece.line() == numbers.get(i);
            off[i] += own && isOffStep(line, piece.length()) ? 1 : 0;
          }
        }
      }
      for (List<Refill.Piece> stick : held) {
        for (Refill.Piece piece : stick) {
          if (piece.line() >= 0) {
            Line line = lines.get(numbers.get(piece.line()));
            off[piece.line()] += isOffStep(line, piece.length()) ? 1 : 0;
          }
        }
      }
      return Arrays.stream(off).allMatch(n -> n <= 1);
    }
  }

  private boolean isOffStep(Line line, long length) {
    return length % line.rules.step() != 0 && !wholes.contains(length);
  }

  private void round(List<Stick> chosen, double tolerated) {
    Opened opened = new Opened(chosen);
    for (int t = 0; t < TRIALS && opened.canBeCut; t++) {
      int[] stocks = purchase(opened, opened.worth + tolerated);
      List<List<Refill.Piece>> held =
          stocks == null ? null : refill.trial(stocks, opened.pieces, opened.open);
      if (stocks != null
          && held != null
          && opened.worth(stocks, held) < opened.worth + tolerated * draws.below(1000) / 1000
          && opened.keepsSteps(held)) {
        replace(chosen, stocks, held, opened.numbers);
        return;
      }
    }
  }

  private void replace(
      List<Stick> chosen, int[] stocks, List<List<Refill.Piece>> held, List<Integer> numbers) {
    List<Stick> next = new ArrayList<>();
    for (int s = 0; s < stocks.length; s++) {
      List<Refill.Piece> pieces = new ArrayList<>();
      for (Refill.Piece piece : held.get(s)) {
        int line = piece.line() < 0 ? -1 : numbers.get(piece.line());
        pieces.add(new Refill.Piece(line, piece.length()));
      }
      if (!pieces.isEmpty()) {
        next.add(new Stick(stocks[s], pieces));
      }
    }
    chosen.forEach(this::takeBack);
    sticks.removeAll(chosen);
    next.forEach(this::put);
  }

  /** What is left over is worth more the more of it lies together. */
  private double credit(int stock, List<Refill.Piece> held) {
    long capacity = problem.stocks().get(stock).capacity();
    long left = capacity;
    for (Refill.Piece piece : held) {
      left -= piece.length() + problem.cut();
    }
    return left <= 0
        ? 0
        : perSize * left * left / (left + LITTLE * (longestUsable + problem.cut()));
  }

  /** What a joint of a line takes. */
  private double joint(int line) {
    return line < 0 ? 0 : JOINT * perSize * (lines.get(line).rules.join() + problem.cut());
  }

  /** Sticks to take back: some that leave much, and others that lines have in common with them. */
  private List<Stick> chosen() {
    int most = Math.min(sticks.size(), LEAST_STICKS + draws.below(MORE_STICKS));
    List<Stick> chosen = new ArrayList<>();
    for (int tries = 0; chosen.size() < most && tries < 10 * most; tries++) {
      Stick next = sticks.get(draws.below(sticks.size()));
      int kind = draws.below(3);
      if (kind == 0 || chosen.isEmpty()) {
        for (int i = 0; i < 4; i++) {
          Stick other = sticks.get(draws.below(sticks.size()));
          next = credit(other.stock, other.held) > credit(next.stock, next.held) ? other : next;
        }
      } else if (kind == 1) {
        Stick from = chosen.get(draws.below(chosen.size()));
        Refill.Piece piece = from.held.get(draws.below(from.held.size()));
        if (piece.line() >= 0) {
          List<Stick> on = lines.get(piece.line()).on;
          next = on.get(draws.below(on.size()));
        }
      }
      if (!next.taken) {
        next.taken = true;
        chosen.add(next);
      }
    }
    return chosen;
  }

  /**
   * Sticks that are long enough and may turn out better than what is; null when none were drawn.
   */
  private int @Nullable [] purchase(Opened opened, double most) {
    for (int p = 0; p < PURCHASES; p++) {
      int n = opened.taken.size();
      int[] stocks = new int[n + MOST_SAVED];
      for (int i = 0; i < n; i++) {
        stocks[i] = opened.taken.get(i).stock;
      }
      int less = draws.below(MOST_SAVED + 1);
      int more = draws.below(MOST_SAVED + 1);
      for (int i = 0; i < less && n > 0; i++) {
        stocks[draws.below(n)] = stocks[n - 1];
        n--;
      }
      for (int i = 0; i < more; i++) {
        stocks[n++] = draws.below(counts.length);
      }
      int[] all = opened.others.clone();
      long size = 0;
      boolean had = n > 0;
      for (int i = 0; i < n; i++) {
        Stock of = problem.stocks().get(stocks[i]);
        all[stocks[i]]++;
        size += of.capacity();
        had &= !of.isLimited() || all[stocks[i]] <= (long) of.mostPacks() * of.packSize();
      }
      if (had && size >= opened.needed && cost(all) - perSize * (size - opened.needed) < most) {
        int[] drawn = Arrays.copyOf(stocks, n);
        draws.shuffle(drawn);
        return drawn;
      }
    }
    return null;
  }

  private Found found() {
    List<List<Split>> splits = new ArrayList<>();
    for (List<Split> kept : fixed) {
      splits.add(new ArrayList<>(kept));
    }
    List<List<Long>> lengths = new ArrayList<>();
    lines.forEach(line -> lengths.add(new ArrayList<>()));
    List<Cutting> cuttings = new ArrayList<>();
    for (Stick stick : sticks) {
      List<Long> held = new ArrayList<>();
      for (Refill.Piece piece : stick.held) {
        held.add(piece.length());
        if (piece.line() >= 0) {
          lengths.get(piece.line()).add(piece.length());
        }
      }
      cuttings.add(new Cutting(stick.stock, held));
    }
    List<Map<List<Long>, Integer>> times = new ArrayList<>();
    splits.forEach(split -> times.add(new LinkedHashMap<>()));
    for (int i = 0; i < lines.size(); i++) {
      lengths.get(i).sort(Collections.reverseOrder());
      times.get(lines.get(i).group).merge(lengths.get(i), 1, Integer::sum);
    }
    for (int g = 0; g < splits.size(); g++) {
      List<Split> split = splits.get(g);
      times.get(g).forEach((held, count) -> split.add(new Split(held, count)));
    }
    return new Found(splits, cuttings);
  }
}

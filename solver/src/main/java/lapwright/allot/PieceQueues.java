package lapwright.allot;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.Predicate;
import lapwright.measure.Length;
import lapwright.plan.Cut;
import lapwright.shop.CutRules;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import org.jspecify.annotations.Nullable;

/** The pieces that still want a stick: for each kind a queue, first due first. */
final class PieceQueues {
  private final Map<Kind, List<Block>> queues = new HashMap<>();

  /**
   * @param planned the length that patterns know a piece by
   * @param uncut true of pieces that must be all that their stick gives
   */
  PieceQueues(MaterialOrder order, Function<Need, Length> planned, Predicate<Need> uncut) {
    Map<@Nullable LocalDate, Integer> rankOfDay = new HashMap<>();
    for (LocalDate day :
        new TreeSet<>(order.needs().stream().map(Need::due).filter(Objects::nonNull).toList())) {
      rankOfDay.put(day, rankOfDay.size());
    }
    int lastRank = rankOfDay.size();
    List<Need> needs = new ArrayList<>(order.needs());
    needs.sort(
        Comparator.comparing(Need::due, Comparator.nullsLast(Comparator.<LocalDate>naturalOrder()))
            .thenComparing(Need::job));
    Map<Label, Block> blocks = new LinkedHashMap<>();
    for (Need need : needs) {
      boolean whole = uncut.test(need);
      Length shorter = need.plannedFull(order.saw().kerf()).minus(planned.apply(need));
      for (int copy = need.firstCopy(); copy <= need.lastCopy(); copy++) {
        int rank = rankOfDay.getOrDefault(need.due(), lastRank);
        blocks.computeIfAbsent(
                    new Label(need.job(), copy, need.mark(), need.length(), need.rules()),
                    label -> new Block(label, rank, new Kind(planned.apply(need), whole), shorter))
                .left +=
            need.qty();
      }
    }
    for (Block block : blocks.values()) {
      queues.computeIfAbsent(block.kind, kind -> new ArrayList<>()).add(block);
    }
  }

  /**
   * Pieces of one planned length.
   *
   * @param uncut each must be all that its stick gives
   */
  record Kind(Length length, boolean uncut) {}

  /** How many pieces of each length must be all that their stick gives. */
  Map<Length, Integer> uncutPieces() {
    Map<Length, Integer> pieces = new HashMap<>();
    queues.forEach(
        (kind, blocks) -> {
          if (kind.uncut()) {
            pieces.put(kind.length(), blocks.stream().mapToInt(block -> block.left).sum());
          }
        });
    return pieces;
  }

  /** Rank of the earliest due day among a length's pieces; the first day is 0. */
  int nextRank(Kind kind) {
    return queue(kind).get(0).rank;
  }

  /**
   * For how many sticks in a row {@code perStick} pieces that are due next can come from one job
   * and mark; at least 1, for a stick may serve several.
   */
  int sticksAlike(Kind kind, int perStick) {
    int most = 1;
    for (Block block : queue(kind)) {
      if (block.rank > nextRank(kind)) {
        break;
      }
      most = Math.max(most, block.left / perStick);
    }
    return most;
  }

  /** Takes pieces of a length for {@code sticks} sticks with {@code perStick} on each. */
  List<Cut> take(Kind kind, int perStick, int sticks) {
    Block whole = smallestThatServes(kind, Math.multiplyExact(perStick, sticks));
    if (whole != null) {
      return List.of(take(whole, perStick, sticks));
    }
    if (sticks > 1) {
      throw new IllegalStateException("sticks that are not alike");
    }
    List<Cut> cuts = new ArrayList<>();
    int missing = perStick;
    while (missing > 0) {
      Block next = queue(kind).get(0);
      Cut cut = take(next, Math.min(missing, next.left), 1);
      cuts.add(cut);
      missing -= cut.qty();
    }
    return cuts;
  }

  /** The block due next that is used up most nearly; null when none holds so many. */
  private @Nullable Block smallestThatServes(Kind kind, int pieces) {
    Block smallest = null;
    for (Block block : queue(kind)) {
      if (block.rank > nextRank(kind)) {
        break;
      }
      if (block.left >= pieces && (smallest == null || block.left < smallest.left)) {
        smallest = block;
      }
    }
    return smallest;
  }

  private Cut take(Block block, int perStick, int sticks) {
    block.left -= perStick * sticks;
    if (block.left == 0) {
      queue(block.kind).remove(block);
    }
    return new Cut(
        block.label.job,
        block.label.copy,
        block.label.mark,
        block.label.length.minus(block.shorter),
        perStick,
        block.label.rules,
        block.shorter);
  }

  private List<Block> queue(Kind kind) {
    List<Block> queue = queues.get(kind);
    if (queue == null || queue.isEmpty()) {
      throw new IllegalStateException(
          "more pieces of " + kind.length() + " are cut than are needed");
    }
    return queue;
  }

  private record Label(String job, int copy, String mark, Length length, CutRules rules) {}

  private static final class Block {
    private final Label label;
    private final int rank;
    private final Kind kind;
    private final Length shorter;
    private int left;

    private Block(Label label, int rank, Kind kind, Length shorter) {
      this.label = label;
      this.rank = rank;
      this.kind = kind;
      this.shorter = shorter;
    }
  }
}

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
import lapwright.measure.Length;
import lapwright.plan.Cut;
import lapwright.shop.CutRules;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import org.jspecify.annotations.Nullable;

/** The pieces that still want a stick: for each planned length a queue, first due first. */
final class PieceQueues {
  private final Map<Length, List<Block>> queues = new HashMap<>();

  /**
   * @param planned the length that patterns know a piece by
   */
  PieceQueues(MaterialOrder order, Function<Need, Length> planned) {
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
      Length shorter = need.plannedFull(order.saw().kerf()).minus(planned.apply(need));
      for (int copy = need.firstCopy(); copy <= need.lastCopy(); copy++) {
        int rank = rankOfDay.getOrDefault(need.due(), lastRank);
        blocks.computeIfAbsent(
                    new Label(need.job(), copy, need.mark(), need.length(), need.rules()),
                    label -> new Block(label, rank, planned.apply(need), shorter))
                .left +=
            need.qty();
      }
    }
    for (Block block : blocks.values()) {
      queues.computeIfAbsent(block.planned, length -> new ArrayList<>()).add(block);
    }
  }

  /** Rank of the earliest due day among a length's pieces; the first day is 0. */
  int nextRank(Length length) {
    return queue(length).get(0).rank;
  }

  /**
   * For how many sticks in a row {@code perStick} pieces that are due next can come from one job
   * and mark; at least 1, for a stick may serve several.
   */
  int sticksAlike(Length length, int perStick) {
    int most = 1;
    for (Block block : queue(length)) {
      if (block.rank > nextRank(length)) {
        break;
      }
      most = Math.max(most, block.left / perStick);
    }
    return most;
  }

  /** Takes pieces of a length for {@code sticks} sticks with {@code perStick} on each. */
  List<Cut> take(Length length, int perStick, int sticks) {
    Block whole = smallestThatServes(length, Math.multiplyExact(perStick, sticks));
    if (whole != null) {
      return List.of(take(whole, perStick, sticks));
    }
    if (sticks > 1) {
      throw new IllegalStateException("sticks that are not alike");
    }
    List<Cut> cuts = new ArrayList<>();
    int missing = perStick;
    while (missing > 0) {
      Block next = queue(length).get(0);
      Cut cut = take(next, Math.min(missing, next.left), 1);
      cuts.add(cut);
      missing -= cut.qty();
    }
    return cuts;
  }

  /** The block due next that is used up most nearly; null when none holds so many. */
  private @Nullable Block smallestThatServes(Length length, int pieces) {
    Block smallest = null;
    for (Block block : queue(length)) {
      if (block.rank > nextRank(length)) {
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
      queue(block.planned).remove(block);
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

  private List<Block> queue(Length length) {
    List<Block> queue = queues.get(length);
    if (queue == null || queue.isEmpty()) {
      throw new IllegalStateException("more pieces of " + length + " are cut than are needed");
    }
    return queue;
  }

  private record Label(String job, int copy, String mark, Length length, CutRules rules) {}

  private static final class Block {
    private final Label label;
    private final int rank;
    private final Length planned;
    private final Length shorter;
    private int left;

    private Block(Label label, int rank, Length planned, Length shorter) {
      this.label = label;
      this.rank = rank;
      this.planned = planned;
      this.shorter = shorter;
    }
  }
}

package lapwright.allot;

import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import lapwright.measure.Length;
import lapwright.plan.Cut;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import org.jspecify.annotations.Nullable;

/** The pieces that still want a stick: for each length a queue, first due first. */
final class PieceQueues {
  private final Map<Length, Deque<Block>> queues = new HashMap<>();

  PieceQueues(MaterialOrder order) {
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
      for (int copy = 1; copy <= need.copies(); copy++) {
        int rank = rankOfDay.getOrDefault(need.due(), lastRank);
        blocks.computeIfAbsent(
                    new Label(need.job(), copy, need.mark(), need.length()),
                    label -> new Block(label, rank))
                .left +=
            need.qty();
      }
    }
    for (Block block : blocks.values()) {
      queues.computeIfAbsent(block.label.length, length -> new ArrayDeque<>()).add(block);
    }
  }

  /** Rank of the due day of the piece that is next in a length's queue; the first day is 0. */
  int nextRank(Length length) {
    return front(length).rank;
  }

  /** For how many sticks in a row the next {@code perStick} pieces come from one job and mark. */
  int sticksAlike(Length length, int perStick) {
    return Math.max(1, front(length).left / perStick);
  }

  /** Takes the next pieces of a length for {@code sticks} sticks with {@code perStick} on each. */
  List<Cut> take(Length length, int perStick, int sticks) {
    Deque<Block> queue = Objects.requireNonNull(queues.get(length));
    List<Cut> cuts = new ArrayList<>();
    int missing = perStick;
    while (missing > 0) {
      Block block = front(length);
      int taken = Math.min(missing, block.left);
      if (sticks > 1 && taken < perStick) {
        throw new IllegalStateException("sticks that are not alike");
      }
      cuts.add(new Cut(block.label.job, block.label.copy, block.label.mark, length, taken));
      block.left -= taken * sticks;
      missing -= taken;
      if (block.left == 0) {
        queue.removeFirst();
      }
    }
    return cuts;
  }

  private Block front(Length length) {
    Deque<Block> queue = queues.get(length);
    Block front = queue == null ? null : queue.peekFirst();
    if (front == null) {
      throw new IllegalStateException("more pieces of " + length + " are cut than are needed");
    }
    return front;
  }

  private record Label(String job, int copy, String mark, Length length) {}

  private static final class Block {
    private final Label label;
    private final int rank;
    private int left;

    private Block(Label label, int rank) {
      this.label = label;
      this.rank = rank;
    }
  }
}

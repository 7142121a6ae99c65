package lapwright.shop;

import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * All that buying one item rests on. A saved plan carries it, so that it can be checked without the
 * folder.
 *
 * @param leftOver pieces that orders placed before have bought or taken and no job of theirs needs;
 *     less than 0 by what they could not get
 * @param needs by due day, then job
 */
public record ItemOrder(ItemStock stock, int leftOver, List<Need> needs) {
  public ItemOrder {
    Objects.requireNonNull(stock);
    needs = List.copyOf(needs);
  }

  public String item() {
    return stock.item();
  }

  /** The same with the offers of these suppliers only. */
  public ItemOrder onlyFrom(Collection<String> suppliers) {
    return new ItemOrder(stock.onlyFrom(suppliers), leftOver, needs);
  }

  /** The same bought new: without pieces on hand, and without what is left over. */
  public ItemOrder withoutStock() {
    return new ItemOrder(new ItemStock(item(), stock.offers(), 0), 0, needs);
  }

  /** What is to be had for these needs beyond what is left over; never less than 0. */
  public int wanted() {
    int wanted = Math.negateExact(leftOver);
    for (Need need : needs) {
      wanted = Math.addExact(wanted, need.total());
    }
    return Math.max(0, wanted);
  }

  /**
   * Pieces that one job needs. Less than 0 in an order after others: so many of those that the
   * others gave it, it does not need any more.
   *
   * @param job name of the job
   * @param due the job's due day; null when not given
   * @param copies how many of the job's copies need them
   * @param qty for one copy, not 0
   * @param firstCopy number of the first of these copies
   */
  public record Need(String job, @Nullable LocalDate due, int copies, int qty, int firstCopy) {
    public Need {
      Objects.requireNonNull(job);
      if (qty == 0 || copies < 1 || firstCopy < 1) {
        throw new IllegalArgumentException(
            "job " + job + " needs " + qty + " for " + copies + " copies");
      }
    }

    /** Number of the last of these copies. */
    public int lastCopy() {
      return Math.addExact(firstCopy, copies) - 1;
    }

    /** Pieces over all these copies of the job. */
    public int total() {
      return Math.multiplyExact(qty, copies);
    }
  }
}

package lapwright.shop;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * One customer's building.
 *
 * @param name unique in an order
 * @param due the day it leaves the shop; null when not given, which counts as last
 * @param times how many of the same building, at least 1
 * @param pieces for one copy
 * @param runs for one copy
 * @param items counted goods for one copy, each named once
 */
public record Job(
    String name,
    JobStatus status,
    @Nullable LocalDate due,
    int times,
    List<Piece> pieces,
    List<Run> runs,
    List<Item> items) {
  /** First due first, then by name; without a due day last. */
  public static final Comparator<Job> BY_DUE_THEN_NAME =
      Comparator.comparing(Job::due, Comparator.nullsLast(Comparator.<LocalDate>naturalOrder()))
          .thenComparing(Job::name);

  public Job {
    Objects.requireNonNull(name);
    Objects.requireNonNull(status);
    pieces = List.copyOf(pieces);
    runs = List.copyOf(runs);
    items = List.copyOf(items);
    if (items.stream().map(Item::name).distinct().count() != items.size()) {
      throw new IllegalArgumentException("job " + name + ": an item is named twice");
    }
    if (times < 1) {
      throw new IllegalArgumentException("job " + name + ": " + times + " times");
    }
  }

  /** A job without items. */
  public Job(
      String name,
      JobStatus status,
      @Nullable LocalDate due,
      int times,
      List<Piece> pieces,
      List<Run> runs) {
    this(name, status, due, times, pieces, runs, List.of());
  }

  /** A job without runs and items. */
  public Job(
      String name, JobStatus status, @Nullable LocalDate due, int times, List<Piece> pieces) {
    this(name, status, due, times, pieces, List.of());
  }

  /**
   * A counted thing that is bought with the job: screws, closures, sealant.
   *
   * @param name that price sheets use
   * @param qty how many, at least 1
   */
  public record Item(String name, int qty) {
    public Item {
      Objects.requireNonNull(name);
      if (qty < 1) {
        throw new IllegalArgumentException("item " + name + ": " + qty);
      }
    }
  }
}

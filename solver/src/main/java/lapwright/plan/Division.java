package lapwright.plan;

import java.util.List;
import java.util.Objects;
import lapwright.measure.Money;

/**
 * The cost of an order divided over its jobs, in proportion to what each would cost alone, bought
 * new. Materials without a price are not in it.
 *
 * <p>It is one rule of many. Where three jobs can share sticks two at a time, any split leaves some
 * two of them better off by themselves, so that no rule pleases every group; the one here only
 * promises that no job pays more than alone, as long as no supply is limited. (Prices of a linear
 * program would promise more, G. Owen, On the core of linear production games, Mathematical
 * Programming 9, 1975; whole sticks do not.)
 *
 * @param total cost of the order, to the cent
 * @param jobs by name
 */
public record Division(Money total, List<JobPart> jobs) {
  public Division {
    Objects.requireNonNull(total);
    jobs = List.copyOf(jobs);
    Money sum = jobs.stream().map(JobPart::pays).reduce(Money.ZERO, Money::plus);
    if (!sum.equals(total)) {
      throw new IllegalArgumentException("shares of " + sum + " do not add up to " + total);
    }
  }

  /**
   * One job's part.
   *
   * @param alone what it would cost by itself, unrounded
   * @param how where its material would come from then
   * @param proved true when it is proved that nothing costs less alone
   * @param pays its share, in whole cents
   */
  public record JobPart(String job, Money alone, Alone how, boolean proved, Money pays) {
    public JobPart {
      Objects.requireNonNull(job);
      Objects.requireNonNull(how);
      if (alone.compareTo(Money.ZERO) < 0 || pays.compareTo(Money.ZERO) < 0) {
        throw new IllegalArgumentException("job " + job + " has a negative share");
      }
      if (!pays.equals(pays.toCent())) {
        throw new IllegalArgumentException("job " + job + " pays fractions of a cent");
      }
    }
  }

  /** Where a job's material would come from if it were alone. */
  public enum Alone {
    /** Bought new, without rack and sticks on hand. */
    BOUGHT_NEW("bought-new"),
    /** What is on offer does not suffice, so rack and sticks on hand are used. */
    WITH_STOCK("with-stock"),
    /** There is no plan of the job alone; its length at the cheapest price stands for it. */
    BY_LENGTH("by-length");

    private final String word;

    Alone(String word) {
      this.word = word;
    }

    /** The word that files use. */
    public String word() {
      return word;
    }
  }

  /** What all jobs would cost, each alone. */
  public Money alone() {
    return jobs.stream().map(JobPart::alone).reduce(Money.ZERO, Money::plus);
  }

  /** True where limits of the supplies make the order dearer than its jobs are alone. */
  public boolean isDearerThanAlone() {
    return alone().compareTo(total) < 0 && alone().toCent().compareTo(total) < 0;
  }
}

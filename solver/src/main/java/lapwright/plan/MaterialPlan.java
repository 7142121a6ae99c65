package lapwright.plan;

import java.util.List;
import java.util.Objects;
import lapwright.shop.MaterialOrder;

/**
 * The plan of one material, with all that it rests on.
 *
 * @param order needs, supplies and machine, as planned
 * @param purchases what is bought, in the order of the supplies
 * @param patterns the tickets, in the order in which they are cut
 * @param cost bought packs, and sticks on hand used at their value; in 1/10,000 of the currency
 *     where the material is priced, else in units of length (the bought and used sticks' stock
 *     lengths)
 * @param cash the part of {@code cost} that is spent now
 * @param lowerBound no plan costs less, by the certificate; same unit
 * @param certificate evidence for {@code lowerBound}
 * @param account where the material goes
 * @param runs how each line of each run is laid, stretch by stretch
 */
public record MaterialPlan(
    MaterialOrder order,
    List<Purchase> purchases,
    List<Pattern> patterns,
    long cost,
    long cash,
    long lowerBound,
    Proof proof,
    Certificate certificate,
    Account account,
    List<RunLine> runs) {
  public MaterialPlan {
    Objects.requireNonNull(order);
    Objects.requireNonNull(proof);
    Objects.requireNonNull(certificate);
    Objects.requireNonNull(account);
    purchases = List.copyOf(purchases);
    patterns = List.copyOf(patterns);
    runs = List.copyOf(runs);
  }

  /** A plan without runs. */
  public MaterialPlan(
      MaterialOrder order,
      List<Purchase> purchases,
      List<Pattern> patterns,
      long cost,
      long cash,
      long lowerBound,
      Proof proof,
      Certificate certificate,
      Account account) {
    this(
        order, purchases, patterns, cost, cash, lowerBound, proof, certificate, account, List.of());
  }

  public String material() {
    return order.material().id();
  }
}

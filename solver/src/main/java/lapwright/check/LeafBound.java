package lapwright.check;

import java.math.BigInteger;
import java.util.List;
import lapwright.measure.Length;

/**
 * One leaf of a certificate, worked out line by line:
 *
 * <p>cost &gt;= (sum of weight x quantity + sum of the stock lines' terms) / scale, rounded up.
 *
 * @param scale weight units that stand for one unit of cost
 * @param decisions what is supposed in the leaf; empty when it is the whole certificate
 * @param pieces each finished length with its weight, longest first
 * @param stock each kind of stock with the greatest weight that one stick carries
 * @param weightSum sum of weight x quantity
 * @param total {@code weightSum} and all terms
 * @param bound {@code total} divided by scale, rounded up; at least what the least packs cost
 */
public record LeafBound(
    long scale,
    List<Decision> decisions,
    List<PieceLine> pieces,
    List<StockLine> stock,
    BigInteger weightSum,
    BigInteger total,
    BigInteger bound) {
  public LeafBound {
    decisions = List.copyOf(decisions);
    pieces = List.copyOf(pieces);
    stock = List.copyOf(stock);
  }

  /**
   * How many packs of some supplies together the leaf is about.
   *
   * @param supplies their keys
   * @param leastPacks at least so many
   * @param mostPacks at most so many; {@link Long#MAX_VALUE} when only the supply limits them
   */
  public record Decision(List<String> supplies, long leastPacks, long mostPacks) {
    public Decision {
      supplies = List.copyOf(supplies);
    }
  }

  /**
   * A finished length.
   *
   * @param length finished length
   * @param quantity over all jobs
   * @param weight of one piece
   */
  public record PieceLine(Length length, long quantity, long weight) {}

  /**
   * Supplies that are equal here: same usable length, price and pack.
   *
   * @param supplies their keys, one or more
   * @param usable what pieces and the cuts between them may take of a stick
   * @param packCost cost of a pack
   * @param packSize sticks a pack
   * @param heaviest the greatest weight that the pieces from one stick add up to
   * @param packs the packs that make the sum of all terms least, of all that the leaf allows;
   *     {@link Long#MAX_VALUE} where a stick carries more than it costs and nothing limits it, so
   *     that the weights prove no more than what the least packs cost
   * @param term (scale x packCost - packSize x heaviest) x packs
   */
  public record StockLine(
      List<String> supplies,
      Length usable,
      long packCost,
      int packSize,
      long heaviest,
      long packs,
      BigInteger term) {
    public StockLine {
      supplies = List.copyOf(supplies);
    }
  }
}

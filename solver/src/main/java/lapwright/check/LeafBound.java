package lapwright.check;

import java.math.BigInteger;
import java.util.List;
import lapwright.measure.Length;

/**
 * One leaf of a certificate, worked out line by line:
 *
 * <p>cost &gt;= ceil((sum of weight x quantity + sum of the stock lines' terms) / scale).
 *
 * @param scale weight units that stand for one unit of cost
 * @param pieces each finished length with its weight, longest first
 * @param stock each kind of stock with the greatest weight that one stick carries
 * @param weightSum sum of weight x quantity
 * @param total {@code weightSum} and all terms
 * @param bound {@code total} divided by scale, rounded up; at least 0
 */
public record LeafBound(
    long scale,
    List<PieceLine> pieces,
    List<StockLine> stock,
    BigInteger weightSum,
    BigInteger total,
    BigInteger bound) {
  public LeafBound {
    pieces = List.copyOf(pieces);
    stock = List.copyOf(stock);
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
   * Supplies that are equal here: same usable length, price, pack and limits.
   *
   * @param supplies their keys, one or more
   * @param usable what pieces and the cuts between them may take of a stick
   * @param packCost cost of a pack
   * @param packSize sticks a pack
   * @param leastPacks packs that the decisions above the leaf ask for at least
   * @param mostPacks packs that can be had there; {@link Integer#MAX_VALUE} without a limit
   * @param heaviest the greatest weight that the pieces from one stick add up to
   * @param term the lesser of (scale x packCost - packSize x heaviest) x leastPacks and the same x
   *     mostPacks, for all the supplies of the line together
   */
  public record StockLine(
      List<String> supplies,
      Length usable,
      long packCost,
      int packSize,
      int leastPacks,
      int mostPacks,
      long heaviest,
      BigInteger term) {
    public StockLine {
      supplies = List.copyOf(supplies);
    }
  }
}

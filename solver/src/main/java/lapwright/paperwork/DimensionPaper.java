package lapwright.paperwork;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import lapwright.compare.ShorterMark;
import lapwright.measure.Length;
import lapwright.plan.Proof;
import lapwright.shop.Need;
import lapwright.shop.Shop;

/**
 * The dimensions that cost most: marks that would save something if they were a little shorter, one
 * at a time, each confirmed by a plan.
 *
 * @param shop the shop's own facts
 * @param most by how much a mark was made shorter at most
 * @param asked how many marks were asked about
 * @param notAsked materials whose marks were not asked about
 * @param rows those of priced materials first; what saves most first
 */
public record DimensionPaper(
    Shop shop, Length most, int asked, List<String> notAsked, List<Row> rows) {
  public DimensionPaper {
    Objects.requireNonNull(shop);
    Objects.requireNonNull(most);
    notAsked = List.copyOf(notAsked);
    rows = List.copyOf(rows);
  }

  /**
   * One mark.
   *
   * @param material id
   * @param name what people call the material
   * @param need the mark
   * @param shorter the length that would do
   * @param priced true where {@code saves} is money, in 1/10,000; else a stock length in units
   * @param saves at least so much
   * @param sticksFewer sticks fewer; below 0 where more but cheaper ones would do
   * @param proof of the plan with the shorter mark
   */
  public record Row(
      String material,
      String name,
      Need need,
      Length shorter,
      boolean priced,
      long saves,
      int sticksFewer,
      Proof proof) {}

  public static DimensionPaper of(
      Shop shop, Length most, int asked, List<String> notAsked, List<ShorterMark> marks) {
    List<Row> rows = new ArrayList<>();
    for (ShorterMark mark : marks) {
      rows.add(
          new Row(
              mark.now().material(),
              mark.now().order().material().name(),
              mark.need(),
              mark.shorter(),
              mark.now().order().isPriced(),
              mark.saves(),
              mark.sticksFewer(),
              mark.then().proof()));
    }
    rows.sort(
        Comparator.comparing(Row::priced)
            .reversed()
            .thenComparing(Comparator.comparingLong(Row::saves).reversed()));
    return new DimensionPaper(shop, most, asked, notAsked, rows);
  }
}

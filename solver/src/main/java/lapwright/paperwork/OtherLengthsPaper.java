package lapwright.paperwork;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import lapwright.Shortage;
import lapwright.compare.OtherLengthResult;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.paperwork.OtherLengthPaper.Side;
import lapwright.plan.MaterialPlan;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Shop;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/**
 * Several lengths beside those on offer, each as if stock came in no other. Rack and sticks on hand
 * are left aside.
 *
 * @param shop the shop's own facts
 * @param lengths as asked
 * @param materials that can be bought in at least one of the lengths, as the shop lists them
 * @param compared how many of them can be bought in every length
 * @param now those, in the lengths on offer
 * @param only those, in each length, in the order of {@code lengths}
 * @param notNow materials that what is on offer cannot give
 */
public record OtherLengthsPaper(
    Shop shop,
    List<Length> lengths,
    List<Row> materials,
    int compared,
    Side now,
    List<Side> only,
    List<Shortage> notNow) {
  public OtherLengthsPaper {
    Objects.requireNonNull(shop);
    lengths = List.copyOf(lengths);
    materials = List.copyOf(materials);
    only = List.copyOf(only);
    notNow = List.copyOf(notNow);
  }

  /**
   * One material.
   *
   * @param material id
   * @param name what people call it
   * @param now in the lengths on offer
   * @param only in each length, in their order
   */
  public record Row(String material, String name, Side now, List<Only> only) {
    public Row {
      only = List.copyOf(only);
    }
  }

  /**
   * A material in one length only.
   *
   * @param stick what a stick of it is taken to cost; null without prices
   * @param side null where pieces do not fit
   */
  public record Only(Length length, @Nullable Money stick, @Nullable Side side) {}

  /**
   * The paper of several comparisons of the same jobs.
   *
   * @param results at least one
   */
  public static OtherLengthsPaper of(List<OtherLengthResult> results) {
    List<OtherLengthPaper> papers = results.stream().map(OtherLengthPaper::of).toList();
    Map<String, OtherLengthPaper.Row> materials = new LinkedHashMap<>();
    papers.stream()
        .sorted(Comparator.comparingInt((OtherLengthPaper paper) -> -paper.rows().size()))
        .forEach(paper -> paper.rows().forEach(row -> materials.putIfAbsent(row.material(), row)));
    List<Row> rows = new ArrayList<>();
    for (OtherLengthPaper.Row first : materials.values()) {
      List<Only> only = new ArrayList<>();
      for (int i = 0; i < results.size(); i++) {
        only.add(only(results.get(i), papers.get(i), first.material()));
      }
      rows.add(new Row(first.material(), first.name(), first.now(), only));
    }
    List<Row> everywhere =
        rows.stream().filter(row -> row.only().stream().allMatch(o -> o.side() != null)).toList();
    List<Side> sums = new ArrayList<>();
    for (int i = 0; i < results.size(); i++) {
      int at = i;
      sums.add(
          everywhere.stream()
              .map(row -> Objects.requireNonNull(row.only().get(at).side()))
              .reduce(Side.NOTHING, Side::plus));
    }
    return new OtherLengthsPaper(
        results.get(0).now().plan().shop(),
        results.stream().map(OtherLengthResult::stockLength).toList(),
        rows,
        everywhere.size(),
        everywhere.stream().map(Row::now).reduce(Side.NOTHING, Side::plus),
        sums,
        results.stream().flatMap(result -> result.notNow().stream()).distinct().toList());
  }

  private static Only only(OtherLengthResult result, OtherLengthPaper paper, String material) {
    Side side = null;
    for (OtherLengthPaper.Row row : paper.rows()) {
      if (row.material().equals(material)) {
        side = row.then();
      }
    }
    Money stick = null;
    for (MaterialPlan plan : result.then().plan().materials()) {
      if (plan.material().equals(material) && plan.order().isPriced()) {
        stick = stick(plan.order(), result.stockLength());
      }
    }
    return new Only(result.stockLength(), stick, side);
  }

  private static @Nullable Money stick(MaterialOrder order, Length length) {
    for (Supply supply : order.supplies()) {
      if (supply instanceof Supply.Offer offer && offer.price() != null) {
        return offer.price().ofSticks(length, 1, order.material().weight());
      }
    }
    return null;
  }
}

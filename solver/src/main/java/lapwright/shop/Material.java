package lapwright.shop;

import java.util.Objects;
import lapwright.measure.Length;
import lapwright.measure.WeightRate;
import org.jspecify.annotations.Nullable;

/**
 * A kind of linear stock.
 *
 * @param id the name that jobs and price sheets use
 * @param name what people call it; the id when they gave no other
 * @param saw id of the machine that cuts it
 * @param millEndsGood true when mill ends need no trim, whether the stick is cut or whole
 * @param shortBy a stick that nobody has measured may be this much shorter than its stock length
 * @param keepOffcutsFrom an offcut at least this long goes to the rack, a shorter one is scrap
 * @param weight weight per length; null when not given
 * @param oneLotPer within what makers and lots never mix
 * @param depth of the section in the plane of angled cuts; null when not given
 * @param oneWay true when its pieces are never turned end for end
 */
public record Material(
    String id,
    String name,
    String saw,
    boolean millEndsGood,
    Length shortBy,
    Length keepOffcutsFrom,
    @Nullable WeightRate weight,
    OneLotPer oneLotPer,
    @Nullable Length depth,
    boolean oneWay) {
  public Material {
    Objects.requireNonNull(id);
    Objects.requireNonNull(name);
    Objects.requireNonNull(saw);
    Objects.requireNonNull(oneLotPer);
    if (shortBy.units() < 0 || keepOffcutsFrom.units() < 0) {
      throw new IllegalArgumentException("material " + id + ": a length is negative");
    }
    if (depth != null && depth.units() <= 0) {
      throw new IllegalArgumentException("material " + id + ": the depth is not positive");
    }
  }

  /** A material without angled cuts whose pieces may be turned. */
  public Material(
      String id,
      String name,
      String saw,
      boolean millEndsGood,
      Length shortBy,
      Length keepOffcutsFrom,
      @Nullable WeightRate weight,
      OneLotPer oneLotPer) {
    this(id, name, saw, millEndsGood, shortBy, keepOffcutsFrom, weight, oneLotPer, null, false);
  }

  /** A material whose makers and lots may mix. */
  public Material(
      String id,
      String name,
      String saw,
      boolean millEndsGood,
      Length shortBy,
      Length keepOffcutsFrom,
      @Nullable WeightRate weight) {
    this(id, name, saw, millEndsGood, shortBy, keepOffcutsFrom, weight, OneLotPer.NONE);
  }
}

package lapwright.paperwork;

import lapwright.measure.LengthStyle;
import lapwright.shop.Shop;

/** How lengths are written within sentences of a paper. */
final class Units {
  private Units() {}

  static LengthStyle of(Shop shop) {
    return switch (shop.units()) {
      case FEET_INCHES -> LengthStyle.FEET_INCHES;
      case MILLIMETRES -> LengthStyle.MILLIMETRES;
    };
  }
}

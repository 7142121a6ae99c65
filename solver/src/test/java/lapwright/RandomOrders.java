package lapwright;

import java.math.BigDecimal;
import java.util.Random;
import lapwright.measure.Length;
import lapwright.shop.Ends;

/** Small random orders with everything that a shop's data can hold. */
public final class RandomOrders {
  private RandomOrders() {}

  /** At most a dozen pieces of at most four lengths; may well be impossible. */
  public static OrderMaker small(Random random) {
    OrderMaker maker = machineAndStock(random);
    int lengths = 1 + random.nextInt(4);
    for (int i = 0; i < lengths; i++) {
      maker.need(
          "job " + random.nextInt(3),
          null,
          1,
          "M" + i,
          1 + random.nextInt(3),
          Length.ofMm(5 + random.nextInt(i == 0 ? 110 : 60)));
    }
    return maker;
  }

  public static OrderMaker machineAndStock(Random random) {
    OrderMaker maker = new OrderMaker("bar");
    int kerf = random.nextInt(4);
    int trim = kerf == 0 || random.nextInt(3) == 0 ? 0 : kerf + random.nextInt(4);
    maker.saw(
        Length.ofMm(kerf),
        Length.ofMm(trim),
        Length.ofMm(random.nextInt(3) == 0 ? 0 : random.nextInt(30)));
    maker.shortBy(Length.ofMm(random.nextInt(2) * random.nextInt(5)));
    maker.keep(Length.ofMm(random.nextInt(40)));
    if (random.nextInt(4) == 0) {
      maker.millEndsGood();
    }
    if (random.nextInt(4) == 0) {
      maker.onHandWorthNothing();
    }
    if (random.nextInt(8) == 0) {
      maker.longestStick("110 mm");
    }
    boolean priced = random.nextInt(5) > 0;
    int offers = 1 + random.nextInt(3);
    for (int j = 0; j < offers; j++) {
      String price = priced ? BigDecimal.valueOf(100 + random.nextInt(900), 2).toString() : null;
      maker.offer(
          "mill " + j,
          Length.ofMm(50 + random.nextInt(80)),
          price,
          1 + (random.nextInt(3) == 0 ? random.nextInt(4) : 0),
          random.nextInt(2) == 0 ? OrderMaker.NO_LIMIT : random.nextInt(9));
    }
    for (int j = random.nextInt(3); j > 0; j--) {
      maker.onHand(Length.ofMm(50 + random.nextInt(80)), 1 + random.nextInt(3));
    }
    for (int j = random.nextInt(4); j > 0; j--) {
      maker.rack(
          "R" + j,
          Length.ofMm(10 + random.nextInt(100)),
          Ends.values()[random.nextInt(Ends.values().length)]);
    }
    return maker;
  }
}

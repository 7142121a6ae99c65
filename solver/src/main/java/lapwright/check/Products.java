package lapwright.check;

/** Compares products of two whole numbers each, exactly. */
final class Products {
  private Products() {}

  /** True when {@code a * b < c * d}. */
  static boolean less(long a, long b, long c, long d) {
    long high = Math.multiplyHigh(a, b);
    long otherHigh = Math.multiplyHigh(c, d);
    return high < otherHigh || (high == otherHigh && Long.compareUnsigned(a * b, c * d) < 0);
  }
}

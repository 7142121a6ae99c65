package lapwright.exact;

/** Whole numbers. */
final class Numbers {
  private Numbers() {}

  /** Greatest common divisor; of 0 and b it is b. */
  static long gcd(long a, long b) {
    long x = Math.abs(a);
    long y = Math.abs(b);
    while (y != 0) {
      long rest = x % y;
      x = y;
      y = rest;
    }
    return x;
  }

  /** a / b rounded up; b positive. */
  static long ceilDiv(long a, long b) {
    return -Math.floorDiv(-a, b);
  }
}

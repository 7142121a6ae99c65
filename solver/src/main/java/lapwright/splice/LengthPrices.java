package lapwright.splice;

/** What a piece of a length costs at the prices of the moment, in floating point, as a guide. */
@FunctionalInterface
interface LengthPrices {
  /** Price of a piece; infinite for a piece that no stick gives. */
  double of(long length);
}

package lapwright.measure;

/** Where a length that lies between two exact ones is rounded to. */
public enum SafeSide {
  /** Pieces, kerf and trims: never less than was asked for. */
  LONGER,
  /** Stock: never more than there is. */
  SHORTER
}

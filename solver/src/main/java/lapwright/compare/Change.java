package lapwright.compare;

import java.util.Objects;

/**
 * Something that is no longer as it was when a plan was made.
 *
 * @param material id of the material
 * @param what that is, such as {@code pieces P1 of pier}
 * @param planned how it was
 * @param now how it is; {@code none} when it is gone
 */
public record Change(Kind kind, String material, String what, String planned, String now) {
  public Change {
    Objects.requireNonNull(kind);
    Objects.requireNonNull(material);
    Objects.requireNonNull(what);
    Objects.requireNonNull(planned);
    Objects.requireNonNull(now);
  }

  /** What has changed. */
  public enum Kind {
    /** The jobs need other pieces. */
    PIECES,
    /** Stock that the plan takes is not there, or not to be had. */
    STOCK,
    /** The material or its saw. */
    CUTTING,
    /** Prices and offers: the plan still fits, but may not be the cheapest. */
    PRICE;

    /** True when the plan cannot be carried out as it stands. */
    public boolean spoilsPlan() {
      return this != PRICE;
    }
  }
}

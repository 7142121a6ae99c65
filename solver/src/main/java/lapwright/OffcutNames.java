package lapwright;

/**
 * Names for the offcuts that a plan puts on the rack. Handed in, because only the rack's keeper
 * knows which names are taken.
 */
@FunctionalInterface
public interface OffcutNames {
  /** A name that was never given before and is not on the rack. */
  String next();
}

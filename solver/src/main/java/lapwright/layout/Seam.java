package lapwright.layout;

import lapwright.shop.JointRules.Joint;

/**
 * What a joint does to the pieces that meet there, in units of length.
 *
 * @param before how far the piece before reaches beyond the joint; less than 0 when it may stay
 *     short of it
 * @param after the same for the piece after
 * @param exact true for a lap: the pieces reach just so far; false for a butt joint, where they
 *     reach from {@code before} (or {@code after}) up to the joint
 */
record Seam(long before, long after, boolean exact) {
  static Seam of(Joint joint) {
    if (joint instanceof Joint.Lap lap) {
      long half = lap.lap().units() / 2;
      return new Seam(lap.lap().units() - half, half, true);
    }
    long half = ((Joint.Butt) joint).gap().units() / 2;
    return new Seam(-half, -half, false);
  }

  /** What each joint adds to the sum of the shortest pieces that cover a length. */
  long join() {
    return before + after;
  }
}

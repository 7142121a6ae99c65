package lapwright.splice;

import lapwright.problem.SpliceCertificate;

/** The best bound so far, in the merged problem's unit, and what proves it. */
final class BestBound {
  private long bound;
  private SpliceCertificate certificate = StepWeights.bySize(1, 0).certificate();

  /** Keeps a bound where it is better; true when it was. */
  boolean take(PackTree.Proven proven) {
    if (proven.bound() != JointBound.IMPOSSIBLE && proven.bound() <= bound) {
      return false;
    }
    bound = proven.bound();
    certificate = proven.certificate();
    return true;
  }

  /** True when no solution is there at all. */
  boolean isImpossible() {
    return bound == JointBound.IMPOSSIBLE;
  }

  long bound() {
    return bound;
  }

  SpliceCertificate certificate() {
    return certificate;
  }
}

package lapwright.plan;

/** How sure it is that no plan costs less. */
public enum Proof {
  /** The certificate's bound, recomputed by the check, equals the cost. */
  PROVED("proved"),
  /** An engine says that nothing costs less; the certificate's bound is lower. */
  CLAIMED("claimed"),
  /** The certificate's bound is lower than the cost and nothing more is known. */
  OPEN("open");

  private final String word;

  Proof(String word) {
    this.word = word;
  }

  /** The word that files and papers use. */
  public String word() {
    return word;
  }
}

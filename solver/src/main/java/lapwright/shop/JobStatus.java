package lapwright.shop;

/** Where a job stands. */
public enum JobStatus {
  /** Being estimated: neither bought nor cut. */
  BID("bid"),
  /** To be bought and cut. */
  FIRM("firm"),
  /** Finished. */
  DONE("done");

  private final String word;

  JobStatus(String word) {
    this.word = word;
  }

  /** The word that files use. */
  public String word() {
    return word;
  }
}

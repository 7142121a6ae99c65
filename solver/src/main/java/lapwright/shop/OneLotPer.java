package lapwright.shop;

/** Within what the sticks of different makers and lots never mix. */
public enum OneLotPer {
  /** They may mix. */
  NONE("none"),
  /** Within the lines of one mark. */
  RUN("run"),
  /** Within one job. */
  JOB("job");

  private final String word;

  OneLotPer(String word) {
    this.word = word;
  }

  /** The word that files use. */
  public String word() {
    return word;
  }
}

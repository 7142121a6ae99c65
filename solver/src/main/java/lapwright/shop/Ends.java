package lapwright.shop;

/** Which ends of a piece of stock are as the mill sent them and which the shop cut. */
public enum Ends {
  /** Both ends were sawn here. */
  SAWN("sawn"),
  /** It starts at a sawn end; the far end is the mill's. */
  ONE_MILL("one-mill"),
  /** Both ends are the mill's. */
  MILL("mill");

  private final String word;

  Ends(String word) {
    this.word = word;
  }

  /** The word that files use. */
  public String word() {
    return word;
  }
}

package lapwright.check;

/** The rules that a plan must keep. */
public enum Rule {
  MATERIAL("each material is planned once"),
  TICKET_NAME("each ticket has a name of its own"),
  SUPPLY("every ticket draws from a supply that the shop has"),
  PLACED_BEFORE("a later order takes only what the orders before it left"),
  LONGEST_STICK("no stick is longer than the saw takes"),
  SHORTEST_CUT("no piece is shorter than the saw cuts"),
  SHORTER("no piece is shorter than its job permits, or longer than it asks for"),
  PIECES("every needed piece is cut exactly once, and nothing else"),
  RUN_LINES("every line of every run is laid once, piece by piece"),
  RUN_COVER("the pieces of a line cover its run from end to end"),
  EXPANSION("a run is interrupted as often and as wide as it asks for"),
  JOINT("pieces lap, or leave a gap, as the run asks for"),
  JOINT_PLACE("joints stand only where they may"),
  JOINT_COUNT("a line has no more joints than it may have"),
  PIECE_LENGTH("pieces of a run keep to its shortest, longest and step"),
  CLOSING("the closing piece lies where the run asks for it, the others whole where it says so"),
  STAGGER("joints of neighbouring lines keep their distance"),
  ONE_LOT("makers and lots do not mix where they must not"),
  CAPACITY("the pieces, cuts and end trims of a ticket fit on its stick"),
  HOLD("at the last cut the vise holds a long enough offcut or piece"),
  AVAILABLE("no more sticks are used or bought than can be had"),
  PURCHASE("what is bought is on offer and named once"),
  PACKS("sticks cut from an offer are bought in whole packs"),
  OFFCUT("an offcut is what the stick leaves after its pieces and cuts"),
  OFFCUT_NAME("every kept offcut has a name that no other offcut bears, and scrap has none"),
  COST("cost is the price of what is bought and the value of sticks on hand"),
  CASH("cash is the price of what is bought"),
  ITEM("each item is planned once, from what is left over, on hand and on offer"),
  ITEM_PACKS("whole packs that can be had give every item that is needed, but for what is missing"),
  ITEM_COST("items cost what their packs cost, and no packs that give as many cost less"),
  DIVISION("what the jobs pay is the cost of the order to the cent"),
  ACCOUNT("the account adds up to the last unit"),
  CERTIFICATE("the certificate speaks of the plan's own supplies, lengths and weights"),
  BOUND("the stated bound follows from the certificate"),
  PROOF("only a plan whose bound equals its cost is proved");

  private final String statement;

  Rule(String statement) {
    this.statement = statement;
  }

  /** The rule as a sentence without its full stop. */
  public String statement() {
    return statement;
  }
}

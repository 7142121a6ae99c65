package lapwright.files.shop;

import java.util.List;
import lapwright.files.source.Table;

/**
 * Rows of on-hand.csv and rack.csv that are not planned: of no material that is, or not for
 * planning. They are kept, so that what a plan leaves still lists them.
 */
public record OtherStock(List<Table.Row> onHand, List<Table.Row> rack) {
  /** The column of the rack's list, and the field of notes about it. */
  public static final String NOT_FOR_PLANNING = "not-for-planning";

  public OtherStock {
    onHand = List.copyOf(onHand);
    rack = List.copyOf(rack);
  }
}

package lapwright.files;

import java.util.List;
import lapwright.files.source.Table;

/**
 * Rows of on-hand.csv and rack.csv that are not planned: of no material that is, or not for
 * planning. They are kept, so that what a plan leaves still lists them.
 */
public record OtherStock(List<Table.Row> onHand, List<Table.Row> rack) {
  public OtherStock {
    onHand = List.copyOf(onHand);
    rack = List.copyOf(rack);
  }
}

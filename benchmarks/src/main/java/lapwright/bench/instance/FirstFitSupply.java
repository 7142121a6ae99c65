package lapwright.bench.instance;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;

/** Whether a supply suffices when pieces are put into the first stick with room, longest first. */
final class FirstFitSupply {
  private FirstFitSupply() {}

  /**
   * @param items by falling size
   */
  static boolean suffices(List<Item> items, List<Stock> stocks) {
    List<Long> room = new ArrayList<>();
    stocks.stream()
        .sorted(Comparator.comparing(Stock::capacity))
        .forEach(
            stock -> {
              for (int stick = 0; stick < stock.mostPacks(); stick++) {
                room.add(stock.capacity());
              }
            });
    for (Item item : items) {
      int stick = 0;
      for (int piece = 0; piece < item.demand(); piece++) {
        while (stick < room.size() && room.get(stick) < item.size()) {
          stick++;
        }
        if (stick == room.size()) {
          return false;
        }
        room.set(stick, room.get(stick) - item.size());
      }
    }
    return true;
  }
}

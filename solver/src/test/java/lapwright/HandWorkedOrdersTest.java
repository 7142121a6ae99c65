package lapwright;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import lapwright.effort.Effort;
import lapwright.measure.Length;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Pattern;
import lapwright.plan.Proof;
import lapwright.plan.Purchase;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Cases that public-domain manuals and a textbook work by hand, and what a kerf does to them. */
final class HandWorkedOrdersTest {
  private static MaterialPlan plan(String stock, String kerf, String pieces) {
    OrderMaker maker = new OrderMaker("lumber").saw(kerf, "0", "0").offer(stock, "1.00");
    int mark = 0;
    for (String piece : pieces.split(" ")) {
      String[] parts = piece.split("@");
      maker.need("frame", "M" + ++mark, Integer.parseInt(parts[0]), parts[1]);
    }
    PlanResult result =
        OrderMaker.planner(1)
            .plan(OrderMaker.shop(), List.of(maker.make()), Map.of(), Effort.unlimited());
    MaterialPlan plan = ((PlanResult.Planned) result).plan().plan().materials().get(0);
    assertEquals(Proof.PROVED, plan.proof());
    return plan;
  }

  private static int sticks(MaterialPlan plan) {
    return plan.purchases().stream().mapToInt(Purchase::packs).sum();
  }

  /** US Army course EN0069 A, Frame Structures, lesson 4. */
  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '~',
      value = {
        "10', 0,      4@54\" 9@36\", 5",
        "10', 1/16\", 4@54\" 9@36\", 5",
        "10', 1/4\",  4@54\" 9@36\", 5",
        "12', 0,      4@54\" 9@36\", 4",
        "12', 1/64\", 4@54\" 9@36\", 5",
        "12', 1/8\",  4@54\" 9@36\", 5",
        "10', 0,      9@36\",        3",
        "8',  0,      9@36\",        5",
        "10', 0,      4@28\",        1",
      })
  void frameMembersFromStockLengths(String stock, String kerf, String pieces, int expected) {
    assertEquals(expected, sticks(plan(stock, kerf, pieces)));
  }

  /** The same lesson: nine 36 in pieces leave 36 in of 10 ft sticks and 156 in of 8 ft sticks. */
  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '~',
      value = {"10', 9@36\", 36\"", "8', 9@36\", 156\"", "10', 4@28\", 8\""})
  void whatIsLeftOfFrameMembers(String stock, String pieces, String left) {
    MaterialPlan plan = plan(stock, "0", pieces);
    assertEquals(
        OrderMaker.length(left), plan.account().scrap().plus(plan.account().offcutsKept()));
  }

  /** US Army course EN01136, lesson 5: summed length would fit three sticks. */
  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '~',
      value = {"0, 4'-11\"", "1/8\", 4'-10-7/8\""})
  void fourUprightsTakeAStickEach(String kerf, String left) {
    MaterialPlan plan = plan("10'", kerf, "4@5'-1\"");
    assertEquals(4, sticks(plan));
    Length offcut = OrderMaker.length(left);
    assertEquals(
        List.of(offcut), plan.patterns().stream().map(Pattern::offcut).distinct().toList());
  }

  /** Dagostino and Peterson, Estimating in Building Construction, ex. 13-15: five studs a stick. */
  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '~',
      value = {"0, 38@24\", 8", "0, 38@23\", 8", "1/8\", 38@24\", 10"})
  void gableStuds(String kerf, String pieces, int expected) {
    assertEquals(expected, sticks(plan("10'", kerf, pieces)));
  }
}

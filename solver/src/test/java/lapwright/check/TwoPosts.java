package lapwright.check;

import static lapwright.check.PlanDraft.account;
import static lapwright.check.PlanDraft.cut;
import static lapwright.check.PlanDraft.need;
import static lapwright.check.PlanDraft.offcut;
import static lapwright.check.PlanDraft.offer;
import static lapwright.check.PlanDraft.pattern;
import static lapwright.check.PlanDraft.sixtyFourths;
import static lapwright.check.PlanDraft.weights;

import java.util.List;
import lapwright.measure.Length;
import lapwright.plan.Certificate;
import lapwright.plan.Proof;
import lapwright.plan.Purchase;
import lapwright.shop.Ends;
import lapwright.shop.Supply;

/**
 * Thirteen posts of 9'-11" and ten braces of 3'-10" from 20' tube at $41.00 that may be 1/4" short,
 * and R7, an offcut that is exactly a post. Worked out by hand: six sticks give two posts each, two
 * give five braces, R7 is the thirteenth post as it lies.
 *
 * <p>In inches: a stick counts 239-3/4; trim 1/2 and two posts with their cuts, 2 x 119-3/32, take
 * 238-11/16 and leave 1-1/16. Five braces with their cuts take 230-15/32 and leave 8-25/32.
 */
final class TwoPosts {
  static final Length TWENTY_FEET = Length.ofFeet(20, 0);
  static final Length POST = Length.ofFeet(9, 11);
  static final Length BRACE = Length.ofFeet(3, 10);
  static final Supply.Offer TUBE = offer(TWENTY_FEET, "41.00");
  static final Supply.RackOffcut R7 = offcut("R7", POST, Ends.SAWN);

  private TwoPosts() {}

  static PlanDraft draft() {
    PlanDraft draft = new PlanDraft();
    draft.shortBy = sixtyFourths(16);
    draft.supplies.addAll(List.of(TUBE, R7));
    draft.needs.addAll(List.of(need("dock", "P", POST, 13), need("dock", "B", BRACE, 10)));
    draft.purchases.add(new Purchase(TUBE.key(), 8));
    draft.patterns.add(
        pattern("T1", TUBE, 6, sixtyFourths(68), List.of(), cut("dock", "P", POST, 2)));
    draft.patterns.add(
        pattern("T2", TUBE, 2, sixtyFourths(8 * 64 + 50), List.of(), cut("dock", "B", BRACE, 5)));
    draft.patterns.add(pattern("T3", R7, 1, Length.ZERO, List.of(), cut("dock", "P", POST, 1)));
    draft.cost = 3_280_000;
    draft.cash = 3_280_000;
    draft.lowerBound = 3_280_000;
    draft.proof = Proof.PROVED;
    draft.certificate = certificate();
    draft.account =
        account(2037 * 64, 2007 * 64, 22 * 6, 4 * 64, 0, 6 * 68 + 2 * (8 * 64 + 50), 0, 8 * 16);
    return draft;
  }

  /**
   * A post is worth half a stick, a brace a fifth of one: 13 x 205,000 + 10 x 82,000 less the post
   * that R7 carries is 3,280,000.
   */
  static Certificate.Weights certificate() {
    return weights(1, POST, 205_000, BRACE, 82_000);
  }
}

package lapwright.files.saved;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;
import lapwright.measure.Price;
import lapwright.plan.Division;
import lapwright.plan.Proof;
import lapwright.shop.Ends;
import lapwright.shop.JointRules;
import lapwright.shop.OneLotPer;
import lapwright.shop.Shop;
import lapwright.shop.Supplier;

/** The words that a saved plan uses for values of which there are a few. */
final class Words {
  static final Map<String, Proof> PROOF = of(Proof.values(), Proof::word);
  static final Map<String, Ends> ENDS = of(Ends.values(), Ends::word);
  static final Map<String, OneLotPer> ONE_LOT_PER = of(OneLotPer.values(), OneLotPer::word);
  static final Map<String, Shop.Units> UNITS = of(Shop.Units.values(), Shop.Units::word);
  static final Map<String, Price.Per> PER = of(Price.Per.values(), Price.Per::word);
  static final Map<String, Supplier.Rounds> ROUNDS =
      of(Supplier.Rounds.values(), Supplier.Rounds::word);

  static final Map<String, JointRules.Where> CLOSING =
      of(JointRules.Where.values(), JointRules.Where::word);

  static final Map<String, Division.Alone> ALONE =
      of(Division.Alone.values(), Division.Alone::word);

  private Words() {}

  private static <T> Map<String, T> of(T[] values, Function<T, String> word) {
    Map<String, T> words = new LinkedHashMap<>();
    for (T value : values) {
      words.put(word.apply(value), value);
    }
    return words;
  }
}

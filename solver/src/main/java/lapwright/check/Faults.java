package lapwright.check;

import java.math.BigDecimal;
import java.util.List;
import lapwright.measure.Length;

/** Takes down the faults of one material. */
final class Faults {
  private final String material;
  private final List<PlanFault> found;

  Faults(String material, List<PlanFault> found) {
    this.material = material;
    this.found = found;
  }

  void ofMaterial(Rule rule, Object expected, Object actual) {
    ofTicket("", rule, expected, actual);
  }

  void ofTicket(String ticket, Rule rule, Object expected, Object actual) {
    found.add(new PlanFault(material, ticket, rule, text(expected), text(actual)));
  }

  /** Notes a fault unless the two lengths, in units, are equal. */
  void unlessEqualLength(String ticket, Rule rule, String what, long expected, Length actual) {
    if (expected != actual.units()) {
      ofTicket(ticket, rule, what + " of " + mm(expected), mm(actual.units()));
    }
  }

  private static String text(Object value) {
    return value instanceof Length length ? mm(length.units()) : String.valueOf(value);
  }

  /** A length in millimetres, exact. */
  static String mm(long units) {
    return BigDecimal.valueOf(units)
            .divide(BigDecimal.valueOf(Length.UNITS_PER_MM))
            .stripTrailingZeros()
            .toPlainString()
        + " mm";
  }
}

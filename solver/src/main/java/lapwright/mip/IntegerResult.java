package lapwright.mip;

import java.util.List;

/**
 * What an integer program's solve gave. The engine works in floating point: a solution is checked,
 * a refusal is only its word.
 *
 * @param values one a column, rounded to the integer; empty without a solution
 */
public record IntegerResult(Outcome outcome, List<Long> values) {
  public IntegerResult {
    values = List.copyOf(values);
    if (outcome.hasSolution() == values.isEmpty()) {
      throw new IllegalArgumentException(outcome + " with " + values.size() + " values");
    }
  }
}

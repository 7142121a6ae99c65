package lapwright.mip;

/**
 * What a linear program's solve gave. Floating point: nothing is decided by it without an exact
 * check.
 */
public final class LinearResult {
  private final Outcome outcome;
  private final double objective;
  private final double[] values;
  private final double[] duals;

  LinearResult(Outcome outcome, double objective, double[] values, double[] duals) {
    this.outcome = outcome;
    this.objective = objective;
    this.values = values;
    this.duals = duals;
  }

  public Outcome outcome() {
    return outcome;
  }

  /** The objective; only when optimal. */
  public double objective() {
    return objective;
  }

  /** Value of a column; only when optimal. */
  public double value(int column) {
    return values[column];
  }

  /** How many columns there were: what was added since has no value here. */
  public int columnCount() {
    return values.length;
  }

  /** Dual value of a row; only when optimal. */
  public double dual(int row) {
    return duals[row];
  }
}

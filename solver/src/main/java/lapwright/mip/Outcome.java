package lapwright.mip;

/** Why a solver of linear or integer models stopped. */
public enum Outcome {
  /** The solution is optimal within the engine's tolerance. */
  OPTIMAL,
  /** There is a solution; a limit stopped the search for a better one. */
  FEASIBLE,
  /** The engine says that no solution exists. */
  INFEASIBLE,
  /** A limit stopped the engine before any solution was found. */
  LIMIT,
  /**
   * The engine gave up, for numerical reasons as a rule: solve again from scratch or do without.
   */
  ABNORMAL;

  public boolean hasSolution() {
    return this == OPTIMAL || this == FEASIBLE;
  }
}

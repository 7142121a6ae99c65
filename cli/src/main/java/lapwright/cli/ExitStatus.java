package lapwright.cli;

/** What the program tells whoever started it. */
final class ExitStatus {
  /** Done: a plan was written and checked, also after Ctrl-C; or there was nothing to plan. */
  static final int DONE = 0;

  /** A fault of the program. */
  static final int PROGRAM_FAULT = 1;

  /** The command line cannot be understood. */
  static final int WRONG_USAGE = 2;

  /** The input is wrong, or a file cannot be read or written. */
  static final int WRONG_INPUT = 3;

  /** No plan is possible: a piece fits nothing, or stock is short. */
  static final int NO_PLAN = 4;

  /** {@code --require-proof} is not met. */
  static final int NOT_PROVED = 5;

  /** The saved plan no longer fits the pieces or the stock. */
  static final int PLAN_OUTDATED = 6;

  /** Interrupted before there was any plan. */
  static final int INTERRUPTED = 130;

  private ExitStatus() {}
}

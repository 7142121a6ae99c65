package lapwright.cli;

import java.io.ByteArrayOutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.function.LongSupplier;

/**
 * A command that was run with its own writers.
 *
 * @param out results
 * @param err messages
 */
record CommandRun(int status, String out, String err) {
  static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

  /** Runs a command line as from a script: no terminal, two cores. */
  static CommandRun of(Object... args) {
    return of(0, new Interruption(), args);
  }

  /** Runs a command line on a terminal of so many lines. */
  static CommandRun onScreen(int lines, Object... args) {
    return of(lines, new Interruption(), args);
  }

  /** The same at a clock of its own. */
  static CommandRun withClock(LongSupplier nanoClock, Object... args) {
    return of(0, new Interruption(), nanoClock, args);
  }

  static CommandRun of(int screenLines, Interruption interruption, Object... args) {
    return of(screenLines, interruption, System::nanoTime, args);
  }

  private static CommandRun of(
      int screenLines, Interruption interruption, LongSupplier nanoClock, Object... args) {
    String[] words = new String[args.length];
    for (int i = 0; i < args.length; i++) {
      words[i] = args[i].toString();
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Surroundings surroundings =
        new Surroundings(
            new PrintWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8)),
            new PrintWriter(new OutputStreamWriter(err, StandardCharsets.UTF_8)),
            out,
            false,
            false,
            screenLines,
            false,
            () -> TODAY,
            nanoClock,
            2,
            interruption);
    int status = Lapwright.run(words, surroundings);
    return new CommandRun(
        status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  String firstLine() {
    return out.lines().findFirst().orElse("");
  }
}

package lapwright.cli;

import java.io.Console;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * What the program finds around it: where it writes, the day, the clock and the cores. Everything
 * that a command knows of the process comes from here, so that tests hand in their own.
 *
 * @param out results; written in the charset of the terminal
 * @param err messages and progress
 * @param bytesOut the stream below {@code out}, for what has a charset of its own
 * @param plainCharacters true when {@code out} can show ASCII only
 * @param colour true when {@code out} is a terminal that may be coloured
 * @param screenLines height of the terminal that {@code out} is; 0 when it is none, and nothing is
 *     shortened then
 * @param progressShown true when {@code err} is a terminal
 * @param today the day on which the program runs
 * @param nanoClock a monotonic clock in nanoseconds
 * @param threads how many cores may work, at least 1
 * @param interruption Ctrl-C
 */
record Surroundings(
    PrintWriter out,
    PrintWriter err,
    OutputStream bytesOut,
    boolean plainCharacters,
    boolean colour,
    int screenLines,
    boolean progressShown,
    Supplier<LocalDate> today,
    LongSupplier nanoClock,
    int threads,
    Interruption interruption) {

  private static final int USUAL_LINES = 40;

  /**
   * The launcher says which streams are terminals ({@code lapwright.terminals}, such as {@code 12}
   * for both), because this Java can only tell when all of them are.
   */
  static Surroundings ofProcess(OutputStream out, OutputStream err) {
    String terminals = System.getProperty("lapwright.terminals", isConsole() ? "12" : "");
    Charset outCharset = charset("sun.stdout.encoding");
    boolean colour = terminals.contains("1") && isColourWanted();
    return new Surroundings(
        new PrintWriter(new OutputStreamWriter(out, outCharset)),
        new PrintWriter(new OutputStreamWriter(err, charset("sun.stderr.encoding")), true),
        out,
        !outCharset.equals(StandardCharsets.UTF_8),
        colour,
        terminals.contains("1") ? heightOfScreen() : 0,
        terminals.contains("2"),
        LocalDate::now,
        System::nanoTime,
        Math.max(1, Runtime.getRuntime().availableProcessors()),
        new Interruption());
  }

  /** The console's charset where the stream is one, else the charset of the user's language. */
  private static Charset charset(String consoleProperty) {
    String name = System.getProperty(consoleProperty, System.getProperty("native.encoding"));
    try {
      return name == null ? StandardCharsets.US_ASCII : Charset.forName(name);
    } catch (IllegalArgumentException unknown) {
      return StandardCharsets.US_ASCII;
    }
  }

  /** What the launcher was told by the terminal, else the usual. */
  private static int heightOfScreen() {
    Integer lines = Integer.getInteger("lapwright.lines");
    return lines == null || lines < 1 ? USUAL_LINES : lines;
  }

  /** All standard streams are the terminal's; asked differently since Java 22. */
  @SuppressWarnings("SystemConsoleNull")
  private static boolean isConsole() {
    Console console = System.console();
    if (console == null) {
      return false;
    }
    try {
      return (boolean) Console.class.getMethod("isTerminal").invoke(console);
    } catch (ReflectiveOperationException beforeJava22) {
      return true;
    }
  }

  /** Nobody asked for plain output: NO_COLOR is empty or absent, and the terminal is not dumb. */
  private static boolean isColourWanted() {
    @Nullable String noColour = System.getenv("NO_COLOR");
    return (noColour == null || noColour.isEmpty()) && !"dumb".equals(System.getenv("TERM"));
  }
}

package lapwright.bench;

import java.math.BigDecimal;
import java.util.Locale;
import lapwright.bench.instance.Instance;
import lapwright.bench.method.Answer;

/** One run as a line: aligned text as it happens, or CSV. */
final class RunLine {
  private static final int[] WIDTHS = {44, 17, 8, 6, 12, 12, 10, 9, 9, 7};
  private static final String[] HEAD = {
    "name", "method", "pieces", "types", "cost", "bound", "proof", "seconds", "cpu s", "MB"
  };

  private RunLine() {}

  static String head(boolean csv) {
    return csv
        ? "class,name,method,pieces,types,cost,bound,proof,seconds,cpu_seconds,peak_mb,faults"
        : TextTable.line(HEAD, WIDTHS);
  }

  static String of(Run run, boolean csv) {
    Instance instance = run.instance();
    Answer answer = run.answer();
    String cost = answer.outcome().hasSolution() ? money(instance, answer.cost()) : "-";
    String bound = money(instance, answer.bound());
    String[] words = {
      instance.name(),
      run.method(),
      String.valueOf(instance.pieces()),
      String.valueOf(instance.types()),
      cost,
      bound,
      answer.outcome().word(),
      seconds(run.wallSeconds()),
      seconds(run.cpuSeconds()),
      String.valueOf(run.peakMegabytes())
    };
    if (csv) {
      return quoted(instance.group())
          + ","
          + String.join(",", words)
          + ","
          + quoted(String.join("; ", run.faults()));
    }
    String note = answer.note().isEmpty() ? "" : "  " + answer.note();
    String faults =
        run.faults().isEmpty() ? "" : "\n  WRONG: " + String.join("\n  WRONG: ", run.faults());
    return TextTable.line(words, WIDTHS) + note + faults;
  }

  static String seconds(double seconds) {
    return String.format(Locale.ROOT, "%.3f", seconds);
  }

  private static String money(Instance instance, long amount) {
    return BigDecimal.valueOf(amount, instance.costDecimals()).toPlainString();
  }

  private static String quoted(String text) {
    return '"' + text.replace("\"", "\"\"") + '"';
  }
}

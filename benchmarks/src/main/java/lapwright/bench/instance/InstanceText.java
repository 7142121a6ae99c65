package lapwright.bench.instance;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The lines of an instance file that hold anything, walked from the first to the last. Lines that
 * start with {@code #} are comments. Collects what is wrong.
 */
final class InstanceText {
  private final Path file;
  private final List<Line> lines = new ArrayList<>();
  private final List<InputFault> faults;
  private int next;

  /** A line's words, and its number from 1. */
  record Line(int number, List<String> words) {
    boolean isWords(int count) {
      return words.size() == count;
    }
  }

  InstanceText(Path file, List<String> text, List<InputFault> faults) {
    this.file = file;
    this.faults = faults;
    for (int i = 0; i < text.size(); i++) {
      String line = text.get(i).replace("\uFEFF", "").strip();
      if (!line.isEmpty() && !line.startsWith("#")) {
        lines.add(new Line(i + 1, List.of(line.split("\\s+"))));
      }
    }
  }

  Path file() {
    return file;
  }

  boolean hasNext() {
    return next < lines.size();
  }

  int linesLeft() {
    return lines.size() - next;
  }

  /** The line {@code ahead} lines after the next; null past the end. */
  @Nullable Line peek(int ahead) {
    return next + ahead < lines.size() ? lines.get(next + ahead) : null;
  }

  /** The next line, which must hold {@code words} words; null, with a fault, if it does not. */
  @Nullable Line take(int words, String expected) {
    if (!hasNext()) {
      faults.add(new InputFault(file, 0, "ends where " + expected + " is expected"));
      return null;
    }
    Line line = lines.get(next++);
    if (!line.isWords(words)) {
      fault(line, "'" + String.join(" ", line.words()) + "' is not " + expected);
      return null;
    }
    return line;
  }

  void fault(Line line, String message) {
    faults.add(new InputFault(file, line.number(), message));
  }

  void faultOfFile(String message) {
    faults.add(new InputFault(file, 0, message));
  }

  /** A whole number from {@code least} to the greatest int; null, with a fault, otherwise. */
  @Nullable Integer count(Line line, int word, int least, String what) {
    String text = line.words().get(word);
    try {
      int value = Integer.parseInt(text);
      if (value >= least) {
        return value;
      }
    } catch (NumberFormatException notWhole) {
      // told below
    }
    fault(line, what + " '" + text + "' is not a whole number of at least " + least);
    return null;
  }

  /** A decimal number of at least 0, or above 0; null, with a fault, otherwise. */
  @Nullable BigDecimal number(Line line, int word, boolean mayBeZero, String what) {
    String text = line.words().get(word);
    if (text.matches("[0-9]{1,15}([.][0-9]{0,9})?")) {
      BigDecimal value = new BigDecimal(text).stripTrailingZeros();
      if (value.signum() > 0 || mayBeZero) {
        return value;
      }
    }
    fault(line, what + " '" + text + "' is not a number " + (mayBeZero ? "from" : "above") + " 0");
    return null;
  }
}

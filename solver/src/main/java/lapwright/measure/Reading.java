package lapwright.measure;

import java.util.List;
import java.util.Objects;

/**
 * What came of reading a quantity that a person typed. A refusal is an expected outcome, not an
 * exception.
 */
public sealed interface Reading<T> {
  /**
   * The text says this value.
   *
   * @param notes what the reader should know about it, such as a rounding or an odd spelling
   */
  record Value<T>(T value, List<String> notes) implements Reading<T> {
    public Value {
      Objects.requireNonNull(value);
      notes = List.copyOf(notes);
    }
  }

  /**
   * The text is not taken.
   *
   * @param wrong what is wrong, without the text itself
   * @param remedy what to do
   */
  record Refused<T>(String wrong, String remedy) implements Reading<T> {
    public Refused {
      Objects.requireNonNull(wrong);
      Objects.requireNonNull(remedy);
    }
  }

  static <T> Reading<T> of(T value) {
    return new Value<>(value, List.of());
  }

  static <T> Reading<T> refused(String wrong, String remedy) {
    return new Refused<>(wrong, remedy);
  }
}

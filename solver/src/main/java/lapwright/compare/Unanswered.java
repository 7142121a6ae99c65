package lapwright.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Questions beside a plan that a fault of the program left without an answer: such a fault costs
 * the comparison, and never the plan that passed its check. Thread-safe.
 */
public final class Unanswered {
  private final List<Question> questions = new ArrayList<>();

  /**
   * A question without an answer.
   *
   * @param about what the answer would have told, in words
   */
  public record Question(String about, RuntimeException fault) {}

  /**
   * Asks.
   *
   * @param about what the answer tells, in words
   * @param without taken for the answer where a fault prevents it
   */
  public <T> T ask(String about, T without, Supplier<T> question) {
    T answer = askOrNull(about, question);
    return answer == null ? without : answer;
  }

  /** The same; null where a fault prevents the answer, or where the answer is null. */
  public <T> @Nullable T askOrNull(String about, Supplier<@Nullable T> question) {
    try {
      return question.get();
    } catch (RuntimeException fault) {
      synchronized (questions) {
        questions.add(new Question(about, fault));
      }
      return null;
    }
  }

  /** What stayed without an answer, in the order of the words. */
  public List<Question> questions() {
    synchronized (questions) {
      return questions.stream().sorted(Comparator.comparing(Question::about)).toList();
    }
  }
}

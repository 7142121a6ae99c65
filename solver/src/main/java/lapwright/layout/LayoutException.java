package lapwright.layout;

import java.util.Objects;
import lapwright.measure.Length;
import org.jspecify.annotations.Nullable;

/**
 * No split of a run keeps its rules: a fault of the input, told to whoever wrote the run. Readers
 * find it before planning starts.
 */
public final class LayoutException extends RuntimeException {
  private static final long serialVersionUID = 1;

  private final String rule;
  private final String advice;
  private final transient @Nullable Length length;

  /**
   * @param rule field of the run that cannot be kept
   * @param reason what stands against it
   * @param advice the nearest change that would do, {@code {}} standing for {@code length}
   */
  LayoutException(String rule, String reason, String advice, @Nullable Length length) {
    super(reason);
    this.rule = Objects.requireNonNull(rule);
    this.advice = Objects.requireNonNull(advice);
    this.length = length;
  }

  /** Field of the run that cannot be kept. */
  public String rule() {
    return rule;
  }

  /** The nearest change that would do; {@code {}} stands for {@link #length}. */
  public String advice() {
    return advice;
  }

  /** The length that the advice speaks of; null when it speaks of none. */
  public @Nullable Length length() {
    return length;
  }
}

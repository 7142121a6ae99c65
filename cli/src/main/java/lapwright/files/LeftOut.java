package lapwright.files;

import java.util.Objects;

/**
 * A job that was read and is not planned.
 *
 * @param why such as {@code it is a bid}
 */
public record LeftOut(String job, String why) {
  public LeftOut {
    Objects.requireNonNull(job);
    Objects.requireNonNull(why);
  }
}

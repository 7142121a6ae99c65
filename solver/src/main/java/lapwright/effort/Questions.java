package lapwright.effort;

import java.util.function.BooleanSupplier;

/** A stop signal that is given once it was asked for a number of times. Not thread-safe. */
public final class Questions implements BooleanSupplier {
  private int left;

  public Questions(int most) {
    this.left = most;
  }

  @Override
  public boolean getAsBoolean() {
    return left == 0 || --left == 0;
  }
}

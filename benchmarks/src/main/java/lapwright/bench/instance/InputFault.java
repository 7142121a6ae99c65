package lapwright.bench.instance;

import java.nio.file.Path;

/**
 * What is wrong in an instance file.
 *
 * @param line from 1; 0 when it concerns the whole file
 * @param message what is wrong, and what is expected
 */
public record InputFault(Path file, int line, String message) {
  @Override
  public String toString() {
    return file + (line > 0 ? ":" + line : "") + ": " + message;
  }
}

package lapwright.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * The greatest resident size of this process, Java's heap and native memory together, as Linux
 * keeps it. Elsewhere it cannot be told and is 0.
 */
final class PeakMemory {
  private static final Path STATUS = Path.of("/proc/self/status");
  private static final Path CLEAR = Path.of("/proc/self/clear_refs");
  private static final String RESET_PEAK = "5";
  private static final long KILOBYTES_PER_MEGABYTE = 1024;

  private PeakMemory() {}

  /** Starts the peak anew from the present size, where the system allows it. */
  static void reset() {
    if (Files.isWritable(CLEAR)) {
      try {
        Files.writeString(CLEAR, RESET_PEAK);
      } catch (IOException notAllowed) {
        // The peak then stays that of the whole process, which is never too small.
      }
    }
  }

  static long megabytes() {
    try {
      for (String line : Files.readAllLines(STATUS)) {
        if (line.startsWith("VmHWM:")) {
          long kilobytes = Long.parseLong(line.replaceAll("[^0-9]", ""));
          return (kilobytes + KILOBYTES_PER_MEGABYTE - 1) / KILOBYTES_PER_MEGABYTE;
        }
      }
    } catch (IOException notLinux) {
      return 0;
    }
    return 0;
  }
}

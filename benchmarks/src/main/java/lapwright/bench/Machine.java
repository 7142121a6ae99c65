package lapwright.bench;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** What a measurement was taken on. */
final class Machine {
  private static final Path CPU_INFO = Path.of("/proc/cpuinfo");

  private Machine() {}

  /** One line: processor, Java, load at the start, threads and limit. */
  static String line(int threads, double limitSeconds) {
    double load = ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage();
    return String.format(
        Locale.ROOT,
        "%s, %d cores, Java %s, heap up to %d MB, load %.1f at the start; %d threads, limit %.0f s",
        processor(),
        Runtime.getRuntime().availableProcessors(),
        Runtime.version(),
        Runtime.getRuntime().maxMemory() >> 20,
        load,
        threads,
        limitSeconds);
  }

  private static String processor() {
    try {
      return Files.readAllLines(CPU_INFO).stream()
          .filter(line -> line.startsWith("model name"))
          .map(line -> line.substring(line.indexOf(':') + 1).strip())
          .findFirst()
          .orElse(System.getProperty("os.arch", ""));
    } catch (IOException notLinux) {
      return System.getProperty("os.name", "") + " " + System.getProperty("os.arch", "");
    }
  }
}

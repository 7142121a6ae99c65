package lapwright.bench;

import java.lang.management.ManagementFactory;

/** Wall and processor time of this process since it was started. */
final class Stopwatch {
  private static final double NANOS = 1e9;

  private final long wall = System.nanoTime();
  private final long cpu = cpuNanos();

  double wallSeconds() {
    return (System.nanoTime() - wall) / NANOS;
  }

  double cpuSeconds() {
    return (cpuNanos() - cpu) / NANOS;
  }

  private static long cpuNanos() {
    return ManagementFactory.getOperatingSystemMXBean()
            instanceof com.sun.management.OperatingSystemMXBean system
        ? system.getProcessCpuTime()
        : 0;
  }
}

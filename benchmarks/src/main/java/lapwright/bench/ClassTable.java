package lapwright.bench;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * What each method did on each class. The ratio is its mean time over that of the first method
 * named; with instances unsolved both are at least as large as shown.
 */
final class ClassTable {
  private ClassTable() {}

  static List<String> lines(List<Run> runs, double limitSeconds) {
    Map<String, Map<String, List<Run>>> byClass = new LinkedHashMap<>();
    for (Run run : runs) {
      byClass
          .computeIfAbsent(run.instance().group(), group -> new LinkedHashMap<>())
          .computeIfAbsent(run.method(), method -> new ArrayList<>())
          .add(run);
    }
    TextTable table =
        new TextTable(
            "class",
            "method",
            "solved",
            "claimed",
            "mean s",
            "median s",
            "95 % s",
            "max s",
            "cpu s",
            "worst gap",
            "peak MB",
            "ratio");
    byClass.forEach(
        (group, byMethod) -> {
          double reference = 0;
          for (Map.Entry<String, List<Run>> entry : byMethod.entrySet()) {
            Statistics statistics = Statistics.of(entry.getValue());
            reference = reference == 0 ? statistics.mean() : reference;
            table.add(
                group,
                entry.getKey(),
                statistics.solved() + "/" + statistics.instances(),
                String.valueOf(statistics.claimed()),
                (statistics.isAllSolved() ? "" : ">= ") + RunLine.seconds(statistics.mean()),
                orLimit(statistics.median(), limitSeconds),
                orLimit(statistics.percentile95(), limitSeconds),
                orLimit(statistics.maximum(), limitSeconds),
                RunLine.seconds(statistics.meanCpu()),
                String.format(Locale.ROOT, "%.3f %%", statistics.worstGapPercent()),
                String.valueOf(statistics.peakMegabytes()),
                ratio(statistics, reference));
          }
        });
    return table.lines();
  }

  private static String orLimit(double seconds, double limitSeconds) {
    return seconds >= limitSeconds ? "> limit" : RunLine.seconds(seconds);
  }

  private static String ratio(Statistics statistics, double reference) {
    if (reference <= 0) {
      return "-";
    }
    double ratio = statistics.mean() / reference;
    String text = String.format(Locale.ROOT, ratio < 10 ? "%.2f" : "%.0f", ratio);
    return (statistics.isAllSolved() ? "" : "> ") + text;
  }
}

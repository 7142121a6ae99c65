package lapwright.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import lapwright.bench.instance.ClassSpec;

/**
 * How time and memory grow with one measure of an instance, the others held.
 *
 * @param measure what grows
 * @param points by growing measure
 * @param fitted false when the points are not of one kind, so that no exponent means anything
 */
record GrowthCurve(String name, String measure, List<Point> points, boolean fitted) {
  /** One value of the measure and the instances that have it. */
  record Point(double value, ClassSpec spec) {}

  private static final long[] PIECES = {1_000, 10_000, 100_000, 1_000_000};
  private static final long[] TYPES = {10, 30, 100, 300, 1_000};
  private static final long[] LENGTHS = {1, 2, 4, 6, 8, 10};
  private static final long[] CAPACITIES = {1_000, 10_000, 100_000, 1_000_000, 10_000_000};

  private static final List<GrowthCurve> ALL =
      List.of(
          curve("pieces", "pieces, 100 types", "demand-mix:types=100,pieces=", PIECES, 1),
          curve("types", "types, 10 pieces each", "demand-mix:types=%d,pieces=", TYPES, 10),
          curve(
              "lengths", "stock lengths, 100 types, 4000 pieces", "several-lengths:k=", LENGTHS, 1),
          curve(
              "capacity",
              "capacity, 100 types, 1000 pieces",
              "demand-mix:types=100,pieces=1000,c=",
              CAPACITIES,
              1),
          new GrowthCurve(
              "grid",
              "1 = on the 1/16 in, 2 = 1/64 in and 0.5 mm mixed; 100 types, 1000 pieces",
              List.of(
                  new Point(1, ClassSpec.parse("sixteenths:types=100,pieces=1000")),
                  new Point(2, ClassSpec.parse("mixed-units:types=100,pieces=1000"))),
              false));

  /** The curve of a name, or all of them. */
  static Stream<GrowthCurve> named(String name) {
    if (name.equals("all")) {
      return ALL.stream();
    }
    List<GrowthCurve> found = ALL.stream().filter(curve -> curve.name.equals(name)).toList();
    if (found.isEmpty()) {
      throw new IllegalArgumentException(
          "no curve is called '"
              + name
              + "'; there are all, "
              + String.join(", ", ALL.stream().map(GrowthCurve::name).toList()));
    }
    return found.stream();
  }

  static List<String> descriptions() {
    return ALL.stream().map(curve -> curve.name + ": " + curve.measure).toList();
  }

  private static GrowthCurve curve(
      String name, String measure, String start, long[] values, long factor) {
    List<Point> points = new ArrayList<>();
    for (long value : values) {
      String spec = String.format(Locale.ROOT, start, value) + value * factor;
      points.add(new Point(value, ClassSpec.parse(spec)));
    }
    return new GrowthCurve(name, measure, points, true);
  }

  /** A table of all methods' mean time and greatest memory at each point, and the exponents. */
  List<String> table(List<List<Run>> runs) {
    List<String> lines = new ArrayList<>(List.of("growth with " + measure));
    List<String> methods = runs.get(0).stream().map(Run::method).distinct().toList();
    TextTable table = new TextTable("value", "method", "solved", "mean s", "max s", "peak MB");
    for (String method : methods) {
      List<Statistics> ofMethod = new ArrayList<>();
      for (List<Run> atPoint : runs) {
        ofMethod.add(
            Statistics.of(atPoint.stream().filter(run -> run.method().equals(method)).toList()));
      }
      for (int p = 0; p < points.size(); p++) {
        Statistics statistics = ofMethod.get(p);
        table.add(
            String.format(Locale.ROOT, "%.0f", points.get(p).value()),
            method,
            statistics.solved() + "/" + statistics.instances(),
            (statistics.isAllSolved() ? "" : ">= ") + RunLine.seconds(statistics.mean()),
            RunLine.seconds(statistics.maximum()),
            String.valueOf(statistics.peakMegabytes()));
      }
      lines.add(summary(method, ofMethod));
    }
    lines.addAll(1, table.lines());
    return lines;
  }

  private String summary(String method, List<Statistics> ofMethod) {
    if (!fitted) {
      double ratio = ofMethod.get(ofMethod.size() - 1).mean() / ofMethod.get(0).mean();
      return String.format(Locale.ROOT, "%s: the last takes %.2f times the first", method, ratio);
    }
    double[] x = points.stream().mapToDouble(Point::value).toArray();
    double[] seconds = ofMethod.stream().mapToDouble(Statistics::mean).toArray();
    double[] memory = ofMethod.stream().mapToDouble(Statistics::peakMegabytes).toArray();
    return String.format(
        Locale.ROOT,
        "%s: time grows with the power %.2f, memory with %.2f (least squares over logarithms)",
        method,
        exponent(x, seconds),
        exponent(x, memory));
  }

  /** Slope of the straight line through (log x, log y) by least squares. */
  static double exponent(double[] x, double[] y) {
    double meanX = 0;
    double meanY = 0;
    for (int i = 0; i < x.length; i++) {
      meanX += Math.log(x[i]) / x.length;
      meanY += Math.log(Math.max(y[i], 1e-6)) / x.length;
    }
    double above = 0;
    double below = 0;
    for (int i = 0; i < x.length; i++) {
      double dx = Math.log(x[i]) - meanX;
      above += dx * (Math.log(Math.max(y[i], 1e-6)) - meanY);
      below += dx * dx;
    }
    return above / below;
  }
}

package lapwright.exact;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;

/** Instances with a known least cost, from the test resources. */
final class Instances {
  private Instances() {}

  /** A problem and its least cost. */
  record Known(String name, StickProblem problem, long leastCost) {
    @Override
    public String toString() {
      return name;
    }
  }

  static final List<String> BIN_PACKING =
      List.of("u20", "u40", "u60", "u80", "u100", "u120", "u250", "u500", "u1000");
  private static final List<Integer> BIN_PACKING_OPTIMA =
      List.of(9, 17, 27, 33, 40, 48, 99, 198, 399);

  static List<Known> workedExamples() {
    List<Known> all = new ArrayList<>();
    for (String line : lines("worked-examples.txt")) {
      if (line.startsWith("#") || line.isBlank()) {
        continue;
      }
      String[] fields = line.split("\\|");
      List<Stock> stocks = new ArrayList<>();
      for (String word : fields[1].trim().split(" ")) {
        String[] parts = word.split("@");
        stocks.add(stock(scaled(parts[0]), parts.length > 1 ? Long.parseLong(parts[1]) : 1));
      }
      List<Item> items = new ArrayList<>();
      for (String word : fields[2].trim().split(" ")) {
        String[] parts = word.split("x");
        items.add(new Item(scaled(parts[0]), Integer.parseInt(parts[1]), false));
      }
      all.add(
          new Known(
              fields[0].trim(),
              new StickProblem(items, stocks, 0),
              Long.parseLong(fields[3].trim())));
    }
    return all;
  }

  static List<Known> binPacking() {
    List<Known> all = new ArrayList<>();
    for (int k = 0; k < BIN_PACKING.size(); k++) {
      List<String> lines = lines("bin-packing/" + BIN_PACKING.get(k) + "_00.bpa");
      long capacity = Long.parseLong(lines.get(1).trim().split(" ")[0]);
      List<Item> items = new ArrayList<>();
      for (String line : lines.subList(2, lines.size())) {
        if (!line.isBlank()) {
          items.add(new Item(Long.parseLong(line.trim()), 1, false));
        }
      }
      all.add(
          new Known(
              BIN_PACKING.get(k),
              new StickProblem(items, List.of(stock(capacity, 1)), 0),
              BIN_PACKING_OPTIMA.get(k)));
    }
    return all;
  }

  /** An unlimited stock, sold singly, without a hold. */
  static Stock stock(long capacity, long cost) {
    return new Stock(capacity, capacity, capacity, true, 0, cost, cost, 1, Integer.MAX_VALUE);
  }

  private static long scaled(String text) {
    return new BigDecimal(text).movePointRight(3).longValueExact();
  }

  private static List<String> lines(String name) {
    try (InputStream in = Instances.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalArgumentException("no resource " + name);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

package lapwright.bench.instance;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import lapwright.bench.instance.InstanceText.Line;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Stock;
import org.jspecify.annotations.Nullable;

/**
 * Reads instances in the open text formats, told apart by what their lines look like:
 *
 * <ul>
 *   <li>bin packing: n; capacity; n sizes, one a line
 *   <li>bin packing with a name: name; {@code capacity n best-known}; n sizes; a file may hold
 *       several after a first line that says how many
 *   <li>cutting stock: m; capacity; m lines {@code size demand}
 *   <li>several stock lengths: K; K lines {@code length availability cost}, availability -1 without
 *       a limit; m; m lines {@code length demand}
 * </ul>
 *
 * Sizes and costs may have decimals; they are made whole exactly. A file {@code optima.csv} beside
 * the instances, {@code name,optimum} a line, tells published optima.
 */
public final class InstanceReader {
  private static final String OPTIMA = "optima.csv";
  private static final int NAMED_HEAD = 3;

  private final List<InputFault> faults = new ArrayList<>();

  /** What is wrong in everything that was read. */
  public List<InputFault> faults() {
    return List.copyOf(faults);
  }

  /** Reads a file, or every file of a folder and of the folders in it, in order of their names. */
  public List<Instance> read(Path path) {
    if (!Files.exists(path)) {
      faults.add(new InputFault(path, 0, "does not exist"));
      return List.of();
    }
    List<Instance> instances = new ArrayList<>();
    try (Stream<Path> walk = Files.walk(path)) {
      List<Path> files =
          walk.filter(Files::isRegularFile)
              .filter(file -> file.equals(path) || isInstance(file))
              .sorted()
              .toList();
      if (files.isEmpty()) {
        faults.add(new InputFault(path, 0, "holds no instances"));
      }
      for (Path file : files) {
        instances.addAll(readFile(file));
      }
    } catch (IOException e) {
      faults.add(new InputFault(path, 0, "cannot be read: " + e.getMessage()));
    }
    return instances;
  }

  private static boolean isInstance(Path file) {
    String name = String.valueOf(file.getFileName());
    return !name.equals(OPTIMA) && !name.endsWith(".md") && !name.startsWith(".");
  }

  private List<Instance> readFile(Path file) throws IOException {
    InstanceText text;
    try {
      text = new InstanceText(file, Files.readAllLines(file), faults);
    } catch (CharacterCodingException e) {
      faults.add(new InputFault(file, 0, "is not a text file in UTF-8"));
      return List.of();
    }
    int before = faults.size();
    List<Instance> instances = new ArrayList<>();
    Line first = text.peek(0);
    Line second = text.peek(1);
    if (first == null || second == null) {
      text.faultOfFile("holds no instance");
    } else if (isNamed(text)) {
      addUnlessNull(instances, named(text));
    } else if (first.isWords(1) && second.isWords(1) && isHeadOfNamed(text.peek(2))) {
      Integer count = text.count(first, 0, 1, "number of instances");
      text.take(1, "the number of instances");
      for (int i = 0; count != null && i < count && faults.size() == before; i++) {
        addUnlessNull(instances, named(text));
      }
    } else if (second.isWords(3)) {
      addUnlessNull(instances, severalLengths(text));
    } else {
      addUnlessNull(instances, singleLength(text));
    }
    if (faults.size() == before && text.hasNext()) {
      Line line = text.take(text.peek(0) == null ? 0 : text.peek(0).words().size(), "");
      if (line != null) {
        text.fault(line, "nothing is expected after the last of the instance's lines");
      }
    }
    if (faults.size() > before) {
      return List.of();
    }
    Map<String, Long> optima = optima(file.resolveSibling(OPTIMA));
    return instances.stream()
        .map(
            instance ->
                optima.containsKey(instance.name())
                    ? instance.withKnown(Known.optimum(optima.get(instance.name())))
                    : instance)
        .toList();
  }

  private static void addUnlessNull(List<Instance> instances, @Nullable Instance instance) {
    if (instance != null) {
      instances.add(instance);
    }
  }

  /** A name, three numbers, then single sizes: several stock lengths look alike up to there. */
  private static boolean isNamed(InstanceText text) {
    Line name = text.peek(0);
    if (name == null || !name.isWords(1) || !isHeadOfNamed(text.peek(1))) {
      return false;
    }
    boolean nameIsNumber = name.words().get(0).matches("[0-9]+");
    Line third = text.peek(2);
    Line fourth = text.peek(3);
    return !nameIsNumber
        || (third != null && third.isWords(1) && (fourth == null || fourth.isWords(1)));
  }

  private static boolean isHeadOfNamed(@Nullable Line line) {
    return line != null && line.isWords(NAMED_HEAD);
  }

  private @Nullable Instance named(InstanceText text) {
    Line name = text.take(1, "an instance's name");
    Line head = text.take(NAMED_HEAD, "'capacity pieces best-known'");
    if (name == null || head == null) {
      return null;
    }
    BigDecimal capacity = text.number(head, 0, false, "capacity");
    Integer pieces = text.count(head, 1, 1, "number of pieces");
    Integer best = text.count(head, 2, 0, "best known");
    if (capacity == null || pieces == null || best == null) {
      return null;
    }
    Demands demands = new Demands(text, capacity);
    for (int i = 0; i < pieces && text.hasNext(); i++) {
      demands.takeSize();
    }
    if (demands.lines < pieces) {
      text.faultOfFile(
          "holds "
              + demands.lines
              + " sizes, not the "
              + pieces
              + " that line "
              + head.number()
              + " announces");
    }
    Known known = best > 0 ? Known.reached(best) : Known.NOTHING;
    return demands.singleStock(group(text.file()), name.words().get(0), known);
  }

  private @Nullable Instance singleLength(InstanceText text) {
    Line countLine = text.take(1, "the number of sizes");
    Line capacityLine = text.take(1, "the capacity");
    if (countLine == null || capacityLine == null) {
      return null;
    }
    Integer count = text.count(countLine, 0, 1, "number of sizes");
    BigDecimal capacity = text.number(capacityLine, 0, false, "capacity");
    Line firstSize = text.peek(0);
    if (count == null || capacity == null) {
      return null;
    }
    boolean withDemand = firstSize != null && firstSize.words().size() == 2;
    Demands demands = new Demands(text, capacity);
    while (text.hasNext() && demands.lines < count) {
      if (withDemand) {
        demands.takeSizeAndDemand();
      } else {
        demands.takeSize();
      }
    }
    if (demands.lines < count) {
      text.faultOfFile(
          "holds "
              + demands.lines
              + " sizes, not the "
              + count
              + " that line "
              + countLine.number()
              + " announces");
    }
    return demands.singleStock(group(text.file()), nameOf(text.file()), Known.NOTHING);
  }

  private @Nullable Instance severalLengths(InstanceText text) {
    Line stockCount = text.take(1, "the number of stock lengths");
    Integer stocks = stockCount == null ? null : text.count(stockCount, 0, 1, "stock lengths");
    if (stocks == null) {
      return null;
    }
    List<StockLine> stockLines = new ArrayList<>();
    BigDecimal longest = BigDecimal.ZERO;
    for (int i = 0; i < stocks && text.hasNext(); i++) {
      StockLine stock = stockLine(text);
      if (stock != null) {
        stockLines.add(stock);
        longest = longest.max(stock.length);
      }
    }
    Line itemCount = text.take(1, "the number of item lengths");
    Integer items = itemCount == null ? null : text.count(itemCount, 0, 1, "item lengths");
    if (items == null) {
      return null;
    }
    Demands demands = new Demands(text, longest);
    while (text.hasNext() && demands.lines < items) {
      demands.takeSizeAndDemand();
    }
    if (demands.lines < items) {
      text.faultOfFile("holds " + demands.lines + " item lengths, not " + items);
    }
    if (stockLines.size() < stocks) {
      return null;
    }
    return demands.severalStocks(group(text.file()), nameOf(text.file()), stockLines);
  }

  private record StockLine(BigDecimal length, int available, BigDecimal cost) {}

  private static @Nullable StockLine stockLine(InstanceText text) {
    Line line = text.take(3, "'length availability cost'");
    if (line == null) {
      return null;
    }
    BigDecimal length = text.number(line, 0, false, "stock length");
    Integer available =
        line.words().get(1).equals("-1")
            ? Integer.valueOf(Integer.MAX_VALUE)
            : text.count(line, 1, 0, "availability");
    BigDecimal cost = text.number(line, 2, true, "cost");
    return length == null || available == null || cost == null
        ? null
        : new StockLine(length, available, cost);
  }

  private static String group(Path file) {
    Path parent = file.toAbsolutePath().normalize().getParent();
    return parent == null ? "" : String.valueOf(parent.getFileName());
  }

  private static String nameOf(Path file) {
    String name = String.valueOf(file.getFileName());
    int dot = name.lastIndexOf('.');
    return dot > 0 ? name.substring(0, dot) : name;
  }

  private Map<String, Long> optima(Path file) throws IOException {
    Map<String, Long> optima = new TreeMap<>();
    if (!Files.exists(file)) {
      return optima;
    }
    List<String> lines = Files.readAllLines(file);
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i).strip();
      if (line.isEmpty() || line.startsWith("#") || line.equals("name,optimum")) {
        continue;
      }
      if (line.matches("[^,]+,[0-9]{1,15}")) {
        int comma = line.indexOf(',');
        optima.put(line.substring(0, comma), Long.valueOf(line.substring(comma + 1)));
      } else {
        InputFault fault = new InputFault(file, i + 1, "'" + line + "' is not 'name,optimum'");
        if (!faults.contains(fault)) {
          faults.add(fault);
        }
      }
    }
    return optima;
  }

  /** Sizes and demands as they are read, still with their decimals. */
  private static final class Demands {
    private final InstanceText text;
    private final BigDecimal longest;
    private final Map<BigDecimal, Integer> demands = new TreeMap<>();
    private int lines;

    Demands(InstanceText text, BigDecimal longest) {
      this.text = text;
      this.longest = longest;
    }

    void takeSize() {
      lines++;
      Line line = text.take(1, "a single size");
      if (line != null) {
        add(line, 1);
      }
    }

    void takeSizeAndDemand() {
      lines++;
      Line line = text.take(2, "'size demand'");
      Integer demand = line == null ? null : text.count(line, 1, 1, "demand");
      if (line != null && demand != null) {
        add(line, demand);
      }
    }

    private void add(Line line, int demand) {
      BigDecimal size = text.number(line, 0, false, "size");
      if (size == null) {
        return;
      }
      if (size.compareTo(longest) > 0) {
        text.fault(line, "size " + size.toPlainString() + " is above " + longest.toPlainString());
        return;
      }
      long sum = (long) demands.getOrDefault(size, 0) + demand;
      if (sum > Integer.MAX_VALUE) {
        text.fault(line, "more than 2,147,483,647 pieces of one size");
        return;
      }
      demands.put(size, (int) sum);
    }

    private int decimals() {
      return Math.max(
          0,
          demands.keySet().stream().mapToInt(BigDecimal::scale).reduce(longest.scale(), Math::max));
    }

    private Map<Long, Integer> whole(int decimals) {
      Map<Long, Integer> whole = new TreeMap<>();
      demands.forEach((size, demand) -> whole.put(wholeNumber(size, decimals), demand));
      return whole;
    }

    Instance singleStock(String group, String name, Known known) {
      int decimals = decimals();
      return Instance.ofDemands(
          group, name, wholeNumber(longest, decimals), whole(decimals), known);
    }

    Instance severalStocks(String group, String name, List<StockLine> stockLines) {
      int decimals =
          stockLines.stream().mapToInt(stock -> stock.length.scale()).reduce(decimals(), Math::max);
      int costDecimals =
          stockLines.stream().mapToInt(stock -> stock.cost.scale()).reduce(0, Math::max);
      List<Stock> stocks =
          stockLines.stream()
              .map(
                  stock ->
                      Instance.stock(
                          wholeNumber(stock.length, decimals),
                          wholeNumber(stock.cost, costDecimals),
                          stock.available))
              .toList();
      StickProblem problem = new StickProblem(Instance.items(whole(decimals)), stocks, 0);
      return new Instance(group, name, problem, Known.NOTHING, costDecimals);
    }

    private static long wholeNumber(BigDecimal value, int decimals) {
      return value.movePointRight(decimals).longValueExact();
    }
  }
}

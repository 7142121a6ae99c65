package lapwright.bench.instance;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;

/**
 * Writes instances in the open formats: bin packing where every size is demanded once, cutting
 * stock where one stock length is unlimited, several stock lengths otherwise.
 */
public final class InstanceWriter {
  private InstanceWriter() {}

  /**
   * Writes each instance into a folder named after its class, and the known optima beside them.
   *
   * @throws IllegalArgumentException if an instance has packs, which no open format holds; then
   *     nothing is written
   * @return the folders that were written to
   */
  public static List<Path> write(List<Instance> instances, Path folder) throws IOException {
    for (Instance instance : instances) {
      if (instance.problem().stocks().stream().anyMatch(stock -> stock.packSize() > 1)) {
        throw new IllegalArgumentException(
            instance.name() + " has packs, for which there is no open format");
      }
    }
    List<Path> folders = new ArrayList<>();
    List<String> optima = new ArrayList<>();
    for (int i = 0; i < instances.size(); i++) {
      Instance instance = instances.get(i);
      Path group = folder.resolve(instance.group().replaceAll("[^A-Za-z0-9.-]+", "-"));
      Files.createDirectories(group);
      replace(group.resolve(instance.name() + ".txt"), lines(instance));
      instance.known().optimum().ifPresent(optimum -> optima.add(instance.name() + "," + optimum));
      boolean lastOfGroup =
          i + 1 == instances.size() || !instances.get(i + 1).group().equals(instance.group());
      if (lastOfGroup) {
        if (!optima.isEmpty()) {
          optima.add(0, "name,optimum");
          replace(group.resolve("optima.csv"), optima);
          optima.clear();
        }
        folders.add(group);
      }
    }
    return folders;
  }

  /** The instance in the plainest format that holds it. */
  static List<String> lines(Instance instance) {
    List<Item> items = instance.problem().items();
    List<Stock> stocks = instance.problem().stocks();
    List<String> lines = new ArrayList<>();
    if (instance.isSingleStock() && instance.pieces() == items.size()) {
      lines.add(String.valueOf(items.size()));
      lines.add(String.valueOf(stocks.get(0).capacity()));
      items.forEach(item -> lines.add(String.valueOf(item.size())));
      return lines;
    }
    if (instance.isSingleStock()) {
      lines.add(String.valueOf(items.size()));
      lines.add(String.valueOf(stocks.get(0).capacity()));
    } else {
      lines.add(String.valueOf(stocks.size()));
      for (Stock stock : stocks) {
        String available = stock.isLimited() ? String.valueOf(stock.mostPacks()) : "-1";
        String cost = BigDecimal.valueOf(stock.packCost(), instance.costDecimals()).toPlainString();
        lines.add(stock.capacity() + " " + available + " " + cost);
      }
      lines.add(String.valueOf(items.size()));
    }
    items.forEach(item -> lines.add(item.size() + " " + item.demand()));
    return lines;
  }

  /** Writes beside the file, then moves, so that nothing is half-written. */
  static void replace(Path file, List<String> lines) throws IOException {
    Path beside = file.resolveSibling(file.getFileName() + ".new");
    Files.write(beside, lines);
    Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING);
  }
}

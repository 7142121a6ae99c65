package lapwright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import lapwright.files.OrderInput;
import lapwright.files.saved.PlanFile;
import lapwright.files.saved.PlanReading;
import lapwright.paperwork.OrderFacts.Attention;
import lapwright.plan.OrderPlan;

/**
 * Orders that are saved in folders beside this one, as a shop keeps them that has a folder for each
 * order: a job that one of them holds, and that is still firm, would be bought a second time.
 */
final class OrdersBeside {
  private OrdersBeside() {}

  /** A line for each order that holds some of the jobs already, by folder. */
  static List<Attention> holding(Path folder, OrderInput input) {
    List<Attention> attention = new ArrayList<>();
    for (Path beside : beside(folder)) {
      if (PlanFile.read(beside.resolve(PlanFile.NAME)) instanceof PlanReading.Saved saved) {
        Set<String> jobs = new TreeSet<>();
        saved.orders().stream()
            .filter(order -> order.shop().name().equals(input.order().shop().name()))
            .forEach(order -> jobs.addAll(jobs(order)));
        jobs.retainAll(input.wanted());
        if (!jobs.isEmpty()) {
          String name = Objects.requireNonNull(beside.getFileName()).toString();
          attention.add(
              new Attention(
                  String.join(", ", jobs)
                      + (jobs.size() == 1 ? " is" : " are")
                      + " in the order saved in "
                      + name
                      + " already and would be bought again",
                  "name "
                      + (jobs.size() == 1 ? "it" : "them")
                      + " under without in order.yaml, or set "
                      + (jobs.size() == 1 ? "it" : "them")
                      + " to done; what "
                      + (jobs.size() == 1 ? "it needs" : "they need")
                      + " besides is bought there with --more"));
        }
      }
    }
    return attention;
  }

  /** Folders beside this one that hold a plan; none where it has no order.yaml, as a lone one. */
  private static List<Path> beside(Path folder) {
    Path here = folder.toAbsolutePath().normalize();
    Path above = here.getParent();
    boolean isOneOfMany =
        Files.exists(here.resolve("order.yaml")) || Files.exists(here.resolve("order.yml"));
    if (above == null || !isOneOfMany) {
      return List.of();
    }
    try (Stream<Path> all = Files.list(above)) {
      return all.filter(each -> !each.equals(here) && Files.exists(each.resolve(PlanFile.NAME)))
          .sorted(Comparator.comparing(Path::toString))
          .toList();
    } catch (IOException e) {
      return List.of(); // nobody promised that the folder above can be looked into
    }
  }

  private static Set<String> jobs(OrderPlan order) {
    Set<String> jobs = new TreeSet<>();
    order
        .materials()
        .forEach(
            material -> {
              material.order().needs().forEach(need -> jobs.add(need.job()));
              material.order().runs().forEach(need -> jobs.add(need.job()));
            });
    order.items().forEach(item -> item.order().needs().forEach(need -> jobs.add(need.job())));
    return jobs;
  }
}

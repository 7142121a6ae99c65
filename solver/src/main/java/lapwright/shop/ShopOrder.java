package lapwright.shop;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Predicate;
import lapwright.measure.Length;

/**
 * A shop with its stock and its jobs, as read and found sound: the input of planning.
 *
 * @param saws by id
 * @param materials in the order of the files
 * @param supplies by material id: offers first, then sticks on hand, then offcuts
 * @param jobs all that were read, of every status
 * @param items counted goods that are offered or lie in the shop, by name
 */
public record ShopOrder(
    Shop shop,
    Map<String, Saw> saws,
    List<Material> materials,
    Map<String, List<Supply>> supplies,
    List<Job> jobs,
    Map<String, ItemStock> items) {
  public ShopOrder {
    Objects.requireNonNull(shop);
    saws = Map.copyOf(saws);
    materials = List.copyOf(materials);
    supplies = Map.copyOf(supplies);
    jobs = List.copyOf(jobs);
    items = Map.copyOf(items);
  }

  /** A shop that knows no items. */
  public ShopOrder(
      Shop shop,
      Map<String, Saw> saws,
      List<Material> materials,
      Map<String, List<Supply>> supplies,
      List<Job> jobs) {
    this(shop, saws, materials, supplies, jobs, Map.of());
  }

  /**
   * The material orders of the jobs that are wanted, for materials that they need any of. Beside
   * runs, and where lots must not mix, no piece is cut shorter than its job asks for. No piece of a
   * run is shorter than the shortest cut of its saw.
   */
  public List<MaterialOrder> materialOrders(Predicate<Job> wanted) {
    List<Job> inOrder = jobs.stream().filter(wanted).sorted(Job.BY_DUE_THEN_NAME).toList();
    List<MaterialOrder> orders = new ArrayList<>();
    for (Material material : materials) {
      List<Need> needs = new ArrayList<>();
      List<RunNeed> runs = new ArrayList<>();
      Saw saw = saws.get(material.saw());
      for (Job job : inOrder) {
        for (Piece piece : job.pieces()) {
          if (piece.material().equals(material.id())) {
            needs.add(
                new Need(
                    job.name(),
                    job.due(),
                    job.times(),
                    piece.mark(),
                    piece.pointToPoint(material),
                    piece.qty(),
                    piece.purpose(),
                    piece.rulesOn(material)));
          }
        }
        for (Run run : job.runs()) {
          if (run.material().equals(material.id())) {
            RunNeed need = new RunNeed(job.name(), job.due(), job.times(), run);
            runs.add(saw == null ? need : need.withRules(cutOn(saw, run.rules())));
          }
        }
      }
      if (!needs.isEmpty() || !runs.isEmpty()) {
        if (!runs.isEmpty() || material.oneLotPer() != OneLotPer.NONE) {
          needs.replaceAll(need -> need.withRules(need.rules().atFullLength()));
        }
        orders.add(
            new MaterialOrder(
                material,
                Objects.requireNonNull(saw, "saw of " + material.id()),
                shop.onHandValued(),
                delivered(material),
                needs,
                runs));
      }
    }
    return orders;
  }

  /** What a material can be cut from: no offer is longer than its supplier delivers. */
  public List<Supply> delivered(Material material) {
    return supplies.getOrDefault(material.id(), List.of()).stream()
        .filter(supply -> !(supply instanceof Supply.Offer offer) || isDelivered(offer))
        .toList();
  }

  private boolean isDelivered(Supply.Offer offer) {
    Length longest = shop.supplier(offer.supplier()).longest();
    return longest == null || !offer.length().isLongerThan(longest);
  }

  private static JointRules cutOn(Saw saw, JointRules rules) {
    JointRules.Pieces pieces = rules.pieces();
    Length least = saw.shortestCut();
    Length atEnd = pieces.shortestAtEnd();
    return rules.with(
        new JointRules.Pieces(
            longer(pieces.shortest(), least),
            atEnd == null ? null : longer(atEnd, least),
            pieces.longest(),
            pieces.step()));
  }

  private static Length longer(Length a, Length b) {
    return a.isLongerThan(b) ? a : b;
  }

  /** What the jobs that are wanted need of each item, by its name. */
  public List<ItemOrder> itemOrders(Predicate<Job> wanted) {
    SortedMap<String, List<ItemOrder.Need>> needs = new TreeMap<>();
    jobs.stream()
        .filter(wanted)
        .sorted(Job.BY_DUE_THEN_NAME)
        .forEach(
            job ->
                job.items()
                    .forEach(
                        item ->
                            needs
                                .computeIfAbsent(item.name(), name -> new ArrayList<>())
                                .add(
                                    new ItemOrder.Need(
                                        job.name(), job.due(), job.times(), item.qty(), 1))));
    List<ItemOrder> orders = new ArrayList<>();
    needs.forEach(
        (item, ofJobs) ->
            orders.add(
                new ItemOrder(items.getOrDefault(item, ItemStock.unknown(item)), 0, ofJobs)));
    return orders;
  }
}

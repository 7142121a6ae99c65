package lapwright.paperwork;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.paperwork.OrderFacts.Attention;
import lapwright.paperwork.OrderPaper.BuyLine;
import lapwright.paperwork.OrderPaper.ItemLine;
import lapwright.paperwork.OrderPaper.Kept;
import lapwright.paperwork.OrderPaper.StockLine;
import lapwright.paperwork.OrderPaper.SupplierPart;
import lapwright.plan.Cut;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Pattern;
import lapwright.plan.Purchase;
import lapwright.shop.Material;
import lapwright.shop.Shop;
import lapwright.shop.Supplier;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/** Gathers the lines of an order's paper, material by material. */
final class OrderLines {
  private static final Comparator<String> NAMED_FIRST =
      Comparator.comparing(String::isEmpty).thenComparing(Comparator.naturalOrder());

  private final Shop shop;
  private final OrderFacts facts;
  private final SortedMap<String, List<BuyLine>> bySupplier = new TreeMap<>(NAMED_FIRST);
  private final List<StockLine> boughtBefore = new ArrayList<>();
  private final List<StockLine> onHand = new ArrayList<>();
  private final List<StockLine> rack = new ArrayList<>();
  private final List<Attention> attention = new ArrayList<>();
  private int keptPieces;
  private Length keptLength = Length.ZERO;
  private Money keptWorth = Money.ZERO;

  OrderLines(Shop shop, OrderFacts facts) {
    this.shop = shop;
    this.facts = facts;
    attention.addAll(facts.notes());
  }

  void add(MaterialPlan plan) {
    lookAtShortPieces(plan);
    Supplies supplies = Supplies.of(plan.order());
    StockWorth worth = StockWorth.of(plan.order());
    plan.purchases().stream()
        .map(purchase -> buyLine(plan, supplies.offer(purchase.supply()), purchase))
        .sorted(Comparator.comparing(line -> line.offer().length()))
        .forEach(
            line -> {
              bySupplier
                  .computeIfAbsent(line.offer().supplier(), name -> new ArrayList<>())
                  .add(line);
              lookAtPrice(line);
            });
    Map<String, Integer> used = new TreeMap<>();
    plan.patterns()
        .forEach(pattern -> used.merge(pattern.supply(), pattern.times(), Math::addExact));
    for (Supply supply : plan.order().supplies()) {
      int sticks = used.getOrDefault(supply.key(), 0);
      if (sticks > 0) {
        stockLine(plan, worth, supply, sticks);
      }
    }
    for (Pattern pattern : plan.patterns()) {
      keep(pattern, worth);
    }
  }

  private BuyLine buyLine(MaterialPlan plan, Supply.Offer offer, Purchase purchase) {
    Money pack = StockWorth.packPrice(plan.order(), offer);
    Supplier supplier = shop.supplier(offer.supplier());
    return new BuyLine(
        plan.material(),
        plan.order().material().name(),
        offer,
        purchase.packs(),
        pack == null ? null : pack.times(purchase.packs()),
        pack == null ? null : supplier.billed(pack, purchase.packs()));
  }

  private void stockLine(MaterialPlan plan, StockWorth worth, Supply supply, int sticks) {
    Material material = plan.order().material();
    if (supply instanceof Supply.OnHand) {
      Money stick = worth.ofStick(supply.length());
      onHand.add(
          new StockLine(
              material.id(), material.name(), supply, sticks, timesOrNull(stick, sticks)));
    } else if (supply instanceof Supply.Bought) {
      Money stick = worth.ofStick(supply.length());
      boughtBefore.add(
          new StockLine(
              material.id(), material.name(), supply, sticks, timesOrNull(stick, sticks)));
    } else if (supply instanceof Supply.RackOffcut) {
      rack.add(
          new StockLine(
              material.id(), material.name(), supply, sticks, worth.byLength(supply.length())));
    }
  }

  private static @Nullable Money timesOrNull(@Nullable Money money, int count) {
    return money == null ? null : money.times(count);
  }

  private void keep(Pattern pattern, StockWorth worth) {
    int count = pattern.offcutNames().size();
    if (count > 0) {
      Length length = pattern.offcut().times(count);
      keptPieces = Math.addExact(keptPieces, count);
      keptLength = keptLength.plus(length);
      Money each = worth.byLength(pattern.offcut());
      keptWorth = each == null ? keptWorth : keptWorth.plus(each.times(count));
    }
  }

  private void lookAtShortPieces(MaterialPlan plan) {
    int pieces = 0;
    for (Pattern pattern : plan.patterns()) {
      for (Cut cut : pattern.cuts()) {
        if (!cut.shorter().isZero()) {
          pieces = Math.addExact(pieces, Math.multiplyExact(cut.qty(), pattern.times()));
        }
      }
    }
    if (pieces > 0) {
      attention.add(
          new Attention(
              plan.material()
                  + ": "
                  + pieces
                  + (pieces == 1 ? " piece is" : " pieces are")
                  + " cut shorter than asked for, as the job permits, which saves stock; the proof is"
                  + " of every piece as short as it may be",
              "the tickets and the job's list tell which"));
    }
  }

  private void lookAtPrice(BuyLine line) {
    LocalDate last = line.offer().goodUntil();
    if (facts.today() != null && last != null && last.isBefore(facts.today())) {
      String from = line.offer().supplier();
      attention.add(
          new Attention(
              "the price of "
                  + line.material()
                  + (from.isEmpty() ? "" : " from " + from)
                  + " was good until "
                  + last,
              "ask for today's price before you order"));
    }
  }

  /** Sticks and items of each supplier. */
  List<SupplierPart> suppliers(Map<String, List<ItemLine>> items) {
    SortedSet<String> names = new TreeSet<>(NAMED_FIRST);
    names.addAll(bySupplier.keySet());
    names.addAll(items.keySet());
    return names.stream()
        .map(
            name ->
                new SupplierPart(
                    name,
                    bySupplier.getOrDefault(name, List.of()),
                    items.getOrDefault(name, List.of())))
        .toList();
  }

  List<StockLine> boughtBefore() {
    return boughtBefore;
  }

  List<StockLine> onHand() {
    return onHand;
  }

  List<StockLine> rack() {
    return rack;
  }

  Kept kept() {
    return new Kept(keptPieces, keptLength, keptWorth);
  }

  List<Attention> attention() {
    return attention;
  }
}

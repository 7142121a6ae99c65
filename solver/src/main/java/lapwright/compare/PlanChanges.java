package lapwright.compare;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import lapwright.compare.Change.Kind;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.measure.Price;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Pattern;
import lapwright.shop.CutRules;
import lapwright.shop.ItemOrder;
import lapwright.shop.Material;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.OneLotPer;
import lapwright.shop.RunNeed;
import lapwright.shop.Saw;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/** What has changed in the shop since a plan was made, as far as the plan is concerned. */
public final class PlanChanges {
  static final String NONE = "none";
  static final String NOT_ON_OFFER = "not on offer";

  private final LengthStyle style;
  private final List<Change> changes = new ArrayList<>();

  private PlanChanges(LengthStyle style) {
    this.style = style;
  }

  /**
   * Compares a plan with the shop as it is.
   *
   * @param plan as saved
   * @param now what the jobs need now, and what it can be cut from
   * @param style how lengths are written
   * @return by material: first those of the plan, then those that are new
   */
  public static List<Change> of(OrderPlan plan, List<MaterialOrder> now, LengthStyle style) {
    return of(List.of(plan), now, style);
  }

  /**
   * The same for orders that were placed one after the other, taken as one.
   *
   * @param placed in the order in which they were placed
   */
  public static List<Change> of(
      List<OrderPlan> placed, List<MaterialOrder> now, LengthStyle style) {
    return of(placed, now, List.of(), style);
  }

  /**
   * The same with counted goods.
   *
   * @param itemsNow what the jobs need of each item now
   */
  public static List<Change> of(
      List<OrderPlan> placed,
      List<MaterialOrder> now,
      List<ItemOrder> itemsNow,
      LengthStyle style) {
    Map<String, MaterialOrder> unplanned = new LinkedHashMap<>();
    now.forEach(order -> unplanned.put(order.material().id(), order));
    Map<String, List<MaterialPlan>> plansOf = new LinkedHashMap<>();
    for (OrderPlan order : placed) {
      for (MaterialPlan plan : order.materials()) {
        plansOf.computeIfAbsent(plan.material(), id -> new ArrayList<>()).add(plan);
      }
    }
    PlanChanges changes = new PlanChanges(style);
    List<String> asked =
        placed.isEmpty() ? List.of() : placed.get(placed.size() - 1).onlySuppliers();
    plansOf.forEach(
        (material, plans) -> {
          @Nullable MaterialOrder order = unplanned.remove(material);
          changes.pieces(
              material,
              plans.stream().flatMap(plan -> plan.order().needs().stream()).toList(),
              order == null ? List.of() : order.needs());
          changes.runs(
              material,
              plans.stream().flatMap(plan -> plan.order().runs().stream()).toList(),
              order == null ? List.of() : order.runs());
          if (order != null) {
            MaterialOrder last = plans.get(plans.size() - 1).order();
            changes.cutting(last, order);
            changes.stock(material, plans, order);
            changes.offers(last, asked.isEmpty() ? order : order.onlyFrom(asked));
          }
        });
    unplanned.forEach(
        (material, order) -> {
          changes.pieces(material, List.of(), order.needs());
          changes.runs(material, List.of(), order.runs());
        });
    new ItemChanges(changes::add)
        .of(
            placed,
            asked.isEmpty()
                ? itemsNow
                : itemsNow.stream().map(item -> item.onlyFrom(asked)).toList());
    return List.copyOf(changes.changes);
  }

  private void add(Kind kind, String material, String what, Object planned, Object now) {
    if (!planned.equals(now)) {
      changes.add(new Change(kind, material, what, planned.toString(), now.toString()));
    }
  }

  private void pieces(String material, List<Need> planned, List<Need> now) {
    Map<PieceKind, int[]> counts = new LinkedHashMap<>();
    planned.forEach(need -> counts.computeIfAbsent(kind(need), k -> new int[2])[0] += need.total());
    now.forEach(need -> counts.computeIfAbsent(kind(need), k -> new int[2])[1] += need.total());
    counts.forEach(
        (piece, count) ->
            add(
                Kind.PIECES,
                material,
                (piece.mark.isEmpty() ? "pieces" : piece.mark)
                    + " of "
                    + piece.job
                    + ", "
                    + style.exact(piece.length)
                    + rules(piece.rules),
                count[0],
                count[1]));
  }

  private void runs(String material, List<RunNeed> planned, List<RunNeed> now) {
    changes.addAll(new RunChanges(style).of(material, planned, now));
  }

  private String rules(CutRules rules) {
    return (rules.ends().isSquare()
            ? ""
            : ", ends "
                + rules.ends().word()
                + (rules.ends().pointsAcross() ? " across" : "")
                + " at a depth of "
                + style.exact(rules.depth()))
        + (rules.oneWay() ? ", one way" : "")
        + (rules.mayBeShort().isZero()
            ? ""
            : ", may be " + style.exact(rules.mayBeShort()) + " short");
  }

  private static PieceKind kind(Need need) {
    return new PieceKind(need.job(), need.mark(), need.length(), need.rules());
  }

  private void cutting(MaterialOrder planned, MaterialOrder now) {
    String id = planned.material().id();
    Material before = planned.material();
    Material after = now.material();
    Saw saw = planned.saw();
    Saw sawNow = now.saw();
    add(Kind.CUTTING, id, "saw", saw.id(), sawNow.id());
    add(Kind.CUTTING, id, "kerf", style.exact(saw.kerf()), style.exact(sawNow.kerf()));
    add(Kind.CUTTING, id, "end trim", style.exact(saw.endTrim()), style.exact(sawNow.endTrim()));
    add(Kind.CUTTING, id, "hold", style.exact(saw.hold()), style.exact(sawNow.hold()));
    add(Kind.CUTTING, id, "longest stick", longest(saw), longest(sawNow));
    add(
        Kind.CUTTING,
        id,
        "shortest cut",
        style.exact(saw.shortestCut()),
        style.exact(sawNow.shortestCut()));
    add(Kind.CUTTING, id, "sticks cut at once", saw.stack(), sawNow.stack());
    add(
        Kind.CUTTING,
        id,
        "mill ends",
        before.millEndsGood() ? "good" : "to be trimmed",
        after.millEndsGood() ? "good" : "to be trimmed");
    add(Kind.CUTTING, id, "one lot per", before.oneLotPer().word(), after.oneLotPer().word());
    add(Kind.CUTTING, id, "short by", style.exact(before.shortBy()), style.exact(after.shortBy()));
    add(
        Kind.CUTTING,
        id,
        "keep offcuts from",
        style.exact(before.keepOffcutsFrom()),
        style.exact(after.keepOffcutsFrom()));
  }

  private String longest(Saw saw) {
    @Nullable Length longest = saw.longestStick();
    return longest == null ? "any" : style.exact(longest);
  }

  /** Stock that the plan takes. */
  private void stock(String id, List<MaterialPlan> plans, MaterialOrder now) {
    Map<String, Supply> supplies = byKey(now);
    Map<String, Integer> taken = new LinkedHashMap<>();
    Map<String, Integer> packs = new LinkedHashMap<>();
    Map<String, Supply> planned = new LinkedHashMap<>();
    Set<String> leftByThem = new HashSet<>();
    for (MaterialPlan plan : plans) {
      for (Pattern pattern : plan.patterns()) {
        taken.merge(pattern.supply(), pattern.times(), Math::addExact);
        leftByThem.addAll(pattern.offcutNames());
      }
      plan.purchases()
          .forEach(purchase -> packs.merge(purchase.supply(), purchase.packs(), Math::addExact));
      plan.order().supplies().forEach(supply -> planned.putIfAbsent(supply.key(), supply));
    }
    for (Supply supply : planned.values()) {
      @Nullable Supply here = supplies.get(supply.key());
      int used = taken.getOrDefault(supply.key(), 0);
      if (supply instanceof Supply.OnHand onHand && used > 0) {
        int left = here == null ? 0 : here.atMost();
        if (left < used) {
          add(
              Kind.STOCK,
              id,
              "sticks on hand, " + style.exact(onHand.length()),
              used + " taken",
              left == 0 ? NONE : Integer.toString(left));
        }
      } else if (supply instanceof Supply.RackOffcut offcut
          && used > 0
          && !leftByThem.contains(offcut.id())) {
        boolean withLot = now.material().oneLotPer() != OneLotPer.NONE;
        add(
            Kind.STOCK,
            id,
            "offcut " + offcut.id(),
            offcut(offcut, withLot),
            offcut(here, withLot));
      }
    }
    packs.forEach(
        (key, bought) -> {
          if (planned.get(key) instanceof Supply.Offer offer) {
            bought(id, offer, bought, supplies.get(key));
          }
        });
  }

  private void bought(String material, Supply.Offer offer, int packs, @Nullable Supply here) {
    int sticks = Math.multiplyExact(packs, offer.soldIn());
    if (here == null || here.atMost() < sticks) {
      add(
          Kind.STOCK,
          material,
          offerName(offer),
          sticks + " bought",
          here == null ? NOT_ON_OFFER : "at most " + here.atMost());
    }
  }

  private String offcut(@Nullable Supply supply, boolean withLot) {
    return supply instanceof Supply.RackOffcut offcut
        ? style.exact(offcut.length())
            + ", ends "
            + offcut.ends().word()
            + (withLot ? ", lot " + (offcut.lot().isEmpty() ? "unknown" : offcut.lot()) : "")
        : NONE;
  }

  /** Prices of what the plan could have bought, and offers that are new. */
  private void offers(MaterialOrder planned, MaterialOrder now) {
    String id = planned.material().id();
    Map<String, Supply> before = byKey(planned);
    for (Supply supply : now.supplies()) {
      if (supply instanceof Supply.Offer offer) {
        add(Kind.PRICE, id, offerName(offer), price(before.get(offer.key())), price(offer));
      }
    }
  }

  private static String price(@Nullable Supply supply) {
    return supply instanceof Supply.Offer offer ? price(offer.price()) : NOT_ON_OFFER;
  }

  /** As sheets have it, however many zeros were typed. */
  static String price(@Nullable Price price) {
    if (price == null) {
      return "no price";
    }
    BigDecimal amount = price.amount().stripTrailingZeros();
    return amount.setScale(Math.max(2, amount.scale())).toPlainString()
        + (price.per() == Price.Per.EACH ? " " : " a ")
        + price.per().word();
  }

  private String offerName(Supply.Offer offer) {
    return style.exact(offer.length())
        + (offer.supplier().isEmpty() ? "" : " from " + offer.supplier());
  }

  private static Map<String, Supply> byKey(MaterialOrder order) {
    Map<String, Supply> supplies = new HashMap<>();
    order.supplies().forEach(supply -> supplies.put(supply.key(), supply));
    return supplies;
  }

  private record PieceKind(String job, String mark, Length length, CutRules rules) {
    private PieceKind {
      Objects.requireNonNull(job);
    }
  }
}

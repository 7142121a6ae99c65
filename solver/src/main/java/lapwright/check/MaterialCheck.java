package lapwright.check;

import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import lapwright.measure.Length;
import lapwright.plan.Account;
import lapwright.plan.Cut;
import lapwright.plan.MaterialPlan;
import lapwright.plan.Pattern;
import lapwright.plan.Purchase;
import lapwright.plan.RunLine;
import lapwright.shop.CutRules;
import lapwright.shop.JointRules;
import lapwright.shop.Material;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Need;
import lapwright.shop.OneLotPer;
import lapwright.shop.RunNeed;
import lapwright.shop.Saw;
import lapwright.shop.Supply;

/** The rules of one material's plan, but for its bound. */
final class MaterialCheck {
  private final MaterialPlan plan;
  private final MaterialOrder order;
  private final Saw saw;
  private final Faults faults;
  private final Map<String, Supply> supplies = new LinkedHashMap<>();

  MaterialCheck(MaterialPlan plan, Faults faults) {
    this.plan = plan;
    this.order = plan.order();
    this.saw = order.saw();
    this.faults = faults;
    order.supplies().forEach(supply -> supplies.put(supply.key(), supply));
  }

  void run() {
    checkPieces();
    checkLots();
    Account cut = Account.NOTHING;
    Map<String, Long> used = new HashMap<>();
    for (Pattern pattern : plan.patterns()) {
      Supply supply = supplies.get(pattern.supply());
      if (supply == null) {
        faults.ofTicket(
            pattern.ticket(), Rule.SUPPLY, "a supply of the material", pattern.supply());
        continue;
      }
      checkMachine(pattern.ticket(), supply);
      used.merge(supply.key(), (long) pattern.times(), Long::sum);
      Material material = order.material();
      Stick stick = Stick.of(supply, material, saw);
      cut =
          cut.plus(
              new TicketCheck(pattern, stick, material.keepOffcutsFrom(), saw, faults).account());
    }
    Map<String, Long> packs = checkPurchases();
    checkAvailable(used, packs);
    checkMoney(used, packs);
    checkAccount(overlapsApart(cut.plus(uncut(used, packs))));
  }

  private void checkPieces() {
    Map<PieceKey, Long> needed = new TreeMap<>(PieceKey.ORDER);
    for (Need need : order.needs()) {
      for (int copy = need.firstCopy(); copy <= need.lastCopy(); copy++) {
        needed.merge(
            new PieceKey(need.job(), copy, need.mark(), need.length(), need.rules()),
            (long) need.qty(),
            Math::addExact);
      }
    }
    for (RunLine line : plan.runs()) {
      for (RunLine.RunPiece piece : line.pieces()) {
        needed.merge(
            new PieceKey(
                line.job(), line.copy(), line.pieceMark(piece), piece.length(), CutRules.PLAIN),
            1L,
            Math::addExact);
      }
    }
    Map<PieceKey, Long> given = new TreeMap<>(PieceKey.ORDER);
    Map<PieceKey, String> ticketOf = new HashMap<>();
    for (Pattern pattern : plan.patterns()) {
      for (Cut cut : pattern.cuts()) {
        PieceKey key =
            new PieceKey(cut.job(), cut.copy(), cut.mark(), cut.fullLength(), cut.rules());
        given.merge(key, Math.multiplyExact((long) cut.qty(), pattern.times()), Math::addExact);
        ticketOf.putIfAbsent(key, pattern.ticket());
      }
    }
    needed.forEach(
        (key, quantity) -> {
          long got = given.getOrDefault(key, 0L);
          if (got != quantity) {
            faults.ofMaterial(Rule.PIECES, quantity + " of " + key, got);
          }
        });
    given.forEach(
        (key, quantity) -> {
          if (!needed.containsKey(key)) {
            faults.ofTicket(
                ticketOf.getOrDefault(key, ""), Rule.PIECES, "none of " + key, quantity);
          }
        });
  }

  private void checkLots() {
    if (order.material().oneLotPer() != OneLotPer.JOB) {
      return;
    }
    Map<String, Set<String>> lotsOfJob = new TreeMap<>();
    for (Pattern pattern : plan.patterns()) {
      Supply supply = supplies.get(pattern.supply());
      if (supply != null) {
        for (Cut cut : pattern.cuts()) {
          lotsOfJob.computeIfAbsent(cut.job(), job -> new TreeSet<>()).add(supply.lotKey());
        }
      }
    }
    lotsOfJob.forEach(
        (job, lots) -> {
          if (lots.size() > 1) {
            faults.ofMaterial(Rule.ONE_LOT, "one lot for job " + job, String.join(", ", lots));
          }
        });
  }

  private void checkMachine(String ticket, Supply supply) {
    if (!Stick.fitsMachine(supply, saw)) {
      faults.ofTicket(
          ticket,
          Rule.LONGEST_STICK,
          "sticks of at most "
              + Faults.mm(saw.longestStick() == null ? 0 : saw.longestStick().units()),
          supply.length());
    }
  }

  /** Packs bought of each offer. */
  private Map<String, Long> checkPurchases() {
    Map<String, Long> packs = new HashMap<>();
    for (Purchase purchase : plan.purchases()) {
      Supply supply = supplies.get(purchase.supply());
      if (!(supply instanceof Supply.Offer offer)) {
        faults.ofMaterial(Rule.PURCHASE, "an offer of the material", purchase.supply());
        continue;
      }
      checkMachine("", offer);
      if (packs.put(offer.key(), (long) purchase.packs()) != null) {
        faults.ofMaterial(Rule.PURCHASE, "one line for " + offer.key(), "two");
      }
      if (purchase.packs() > offer.atMostPacks()) {
        faults.ofMaterial(
            Rule.AVAILABLE,
            "at most " + offer.atMostPacks() + " packs of " + offer.key(),
            purchase.packs());
      }
    }
    return packs;
  }

  private void checkAvailable(Map<String, Long> used, Map<String, Long> packs) {
    for (Supply supply : order.supplies()) {
      long sticks = used.getOrDefault(supply.key(), 0L);
      if (supply instanceof Supply.Offer offer) {
        long bought = packs.getOrDefault(offer.key(), 0L) * offer.soldIn();
        if (sticks > bought) {
          faults.ofMaterial(
              Rule.PACKS, "at least " + sticks + " sticks bought of " + offer.key(), bought);
        }
      } else if (sticks > supply.atMost()) {
        faults.ofMaterial(
            Rule.AVAILABLE, "at most " + supply.atMost() + " of " + supply.key(), sticks);
      }
    }
  }

  private void checkMoney(Map<String, Long> used, Map<String, Long> packs) {
    Costs costs = new Costs(order);
    long cash = 0;
    long onHand = 0;
    for (Supply supply : order.supplies()) {
      if (supply instanceof Supply.Offer) {
        long bought = packs.getOrDefault(supply.key(), 0L);
        cash = Math.addExact(cash, Math.multiplyExact(costs.ofPack(supply), bought));
      } else {
        long drawn = used.getOrDefault(supply.key(), 0L);
        onHand = Math.addExact(onHand, Math.multiplyExact(costs.ofPack(supply), drawn));
      }
    }
    if (plan.cash() != cash) {
      faults.ofMaterial(Rule.CASH, cash, plan.cash());
    }
    if (plan.cost() != Math.addExact(cash, onHand)) {
      faults.ofMaterial(Rule.COST, cash + onHand, plan.cost());
    }
  }

  /** Surplus sticks, and what all bought sticks are counted short. */
  private Account uncut(Map<String, Long> used, Map<String, Long> packs) {
    Length surplus = Length.ZERO;
    Length shortAllowance = Length.ZERO;
    for (Supply supply : order.supplies()) {
      if (supply instanceof Supply.Offer offer) {
        long bought = packs.getOrDefault(offer.key(), 0L) * offer.soldIn();
        long uncut = Math.max(0, bought - used.getOrDefault(offer.key(), 0L));
        long counted = Stick.of(offer, order.material(), saw).counted();
        surplus = surplus.plus(Length.ofUnits(counted).times(uncut));
        shortAllowance = shortAllowance.plus(order.material().shortBy().times(bought));
      }
    }
    Length none = Length.ZERO;
    return new Account(none, none, none, none, none, none, none, surplus, shortAllowance);
  }

  /** What pieces of runs overlap is not finished length. */
  private Account overlapsApart(Account account) {
    Map<String, Length> lapOfRun = new HashMap<>();
    for (RunNeed need : order.runs()) {
      if (need.run().rules().joint() instanceof JointRules.Joint.Lap lap) {
        lapOfRun.put(need.job() + "/" + need.run().mark(), lap.lap());
      }
    }
    Length laps = Length.ZERO;
    for (RunLine line : plan.runs()) {
      Length lap = lapOfRun.getOrDefault(line.job() + "/" + line.mark(), Length.ZERO);
      laps = laps.plus(lap.times(line.pieces().size() - 1L));
    }
    return new Account(
        account.drawn(),
        account.finished().minus(laps),
        account.laps().plus(laps),
        account.kerf(),
        account.endTrim(),
        account.offcutsKept(),
        account.scrap(),
        account.surplus(),
        account.shortAllowance());
  }

  private void checkAccount(Account expected) {
    Account stated = plan.account();
    compare("drawn", expected.drawn(), stated.drawn());
    compare("finished pieces", expected.finished(), stated.finished());
    compare("laps", expected.laps(), stated.laps());
    compare("kerf", expected.kerf(), stated.kerf());
    compare("end trim", expected.endTrim(), stated.endTrim());
    compare("offcuts kept", expected.offcutsKept(), stated.offcutsKept());
    compare("scrap", expected.scrap(), stated.scrap());
    compare("surplus", expected.surplus(), stated.surplus());
    compare("allowance for short sticks", expected.shortAllowance(), stated.shortAllowance());
  }

  private void compare(String what, Length expected, Length stated) {
    faults.unlessEqualLength("", Rule.ACCOUNT, what, expected.units(), stated);
  }

  /** A piece as jobs tell it apart. */
  private record PieceKey(String job, int copy, String mark, Length length, CutRules rules) {
    static final Comparator<PieceKey> ORDER =
        Comparator.comparing(PieceKey::job)
            .thenComparing(PieceKey::copy)
            .thenComparing(PieceKey::mark)
            .thenComparing(PieceKey::length)
            .thenComparing(key -> key.rules().toString());

    @Override
    public String toString() {
      return "job "
          + job
          + (copy == 1 ? "" : " (copy " + copy + ")")
          + (mark.isEmpty() ? "" : " mark " + mark)
          + " at "
          + Faults.mm(length.units())
          + (rules.ends().isSquare() ? "" : " with ends " + rules.ends().word());
    }
  }
}

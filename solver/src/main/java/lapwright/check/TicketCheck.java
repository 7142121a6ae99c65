package lapwright.check;

import java.util.List;
import lapwright.measure.Length;
import lapwright.plan.Account;
import lapwright.plan.Cut;
import lapwright.plan.Pattern;
import lapwright.shop.Saw;

/** The rules of one ticket: what fits on its stick, what the vise holds, what is left. */
final class TicketCheck {
  private final Pattern pattern;
  private final Stick stick;
  private final long keepFrom;
  private final Saw saw;
  private final Faults faults;

  TicketCheck(Pattern pattern, Stick stick, Length keepFrom, Saw saw, Faults faults) {
    this.pattern = pattern;
    this.stick = stick;
    this.keepFrom = keepFrom.units();
    this.saw = saw;
    this.faults = faults;
  }

  /** Notes the faults; gives where the material of the ticket's sticks goes. */
  Account account() {
    List<Cut> cuts = pattern.cuts();
    if (cuts.isEmpty()) {
      fault(Rule.PIECES, "at least one cut", "none");
      return Account.NOTHING;
    }
    long boxes = 0;
    long widths = 0;
    long wedges = 0;
    long pieces = 0;
    for (Cut cut : cuts) {
      if (cut.length().units() <= 0) {
        fault(Rule.PIECES, "pieces longer than 0", cut.length());
        return Account.NOTHING;
      }
      checkLength(cut);
      PieceSize size = PieceSize.of(cut, saw.kerf());
      long qty = cut.qty();
      boxes = Math.addExact(boxes, Math.multiplyExact(size.box(), qty));
      widths = Math.addExact(widths, Math.multiplyExact(size.cut(), qty));
      wedges = Math.addExact(wedges, Math.multiplyExact(size.wedges(), qty));
      pieces += qty;
    }
    long rest = stick.rest(boxes, widths);
    if (rest < 0) {
      fault(
          Rule.CAPACITY,
          "at most " + Faults.mm(stick.usableAndCut()) + " of pieces, each with its cut",
          Faults.mm(stick.usableAndCut() - rest));
      return Account.NOTHING;
    }
    long offcut = stick.offcut(rest);
    checkHold(boxes, pieces, offcut);
    faults.unlessEqualLength(pattern.ticket(), Rule.OFFCUT, "an offcut", offcut, pattern.offcut());
    boolean kept = offcut > 0 && offcut >= keepFrom;
    checkNames(kept, offcut);
    long kerf = Math.addExact(widths - stick.kerf(), stick.lastCut(rest));
    return new Account(
        times(stick.counted()),
        times(boxes - wedges),
        Length.ZERO,
        times(kerf),
        times(stick.startTrim()),
        kept ? times(offcut) : Length.ZERO,
        times(kept ? wedges : Math.addExact(wedges, offcut)),
        Length.ZERO,
        Length.ZERO);
  }

  private void checkLength(Cut cut) {
    long lacks = cut.shorter().units();
    if (lacks < 0 || lacks > cut.rules().mayBeShort().units()) {
      fault(
          Rule.SHORTER,
          "mark "
              + cut.mark()
              + " from "
              + Faults.mm(cut.fullLength().units() - cut.rules().mayBeShort().units())
              + " to "
              + Faults.mm(cut.fullLength().units()),
          cut.length());
    }
    if (cut.length().isShorterThan(saw.shortestCut())) {
      fault(Rule.SHORTEST_CUT, "at least " + Faults.mm(saw.shortestCut().units()), cut.length());
    }
  }

  private void checkHold(long finished, long pieces, long offcut) {
    if (offcut >= stick.hold() || (pieces == 1 && stick.usedWhole(finished))) {
      return;
    }
    long last = gripped(pattern.cuts().get(pattern.cuts().size() - 1));
    if (last >= stick.hold()) {
      return;
    }
    boolean another = pattern.cuts().stream().anyMatch(cut -> gripped(cut) >= stick.hold());
    fault(
        Rule.HOLD,
        another
            ? "the longest piece to be cut last, the offcut is shorter than the hold of "
                + Faults.mm(stick.hold())
            : "an offcut or a piece of at least " + Faults.mm(stick.hold()),
        "a last piece of " + Faults.mm(last) + " and an offcut of " + Faults.mm(offcut));
  }

  private long gripped(Cut cut) {
    return PieceSize.of(cut, saw.kerf()).gripped();
  }

  private void checkNames(boolean kept, long offcut) {
    int expected = kept ? pattern.times() : 0;
    if (pattern.offcutNames().size() != expected) {
      fault(
          Rule.OFFCUT_NAME,
          kept
              ? expected + " names, one for each offcut of " + Faults.mm(offcut)
              : "no name, the offcut of " + Faults.mm(offcut) + " is not kept",
          pattern.offcutNames().isEmpty() ? "none" : String.join(", ", pattern.offcutNames()));
    }
  }

  private Length times(long units) {
    return Length.ofUnits(units).times(pattern.times());
  }

  private void fault(Rule rule, Object expected, Object actual) {
    faults.ofTicket(pattern.ticket(), rule, expected, actual);
  }
}

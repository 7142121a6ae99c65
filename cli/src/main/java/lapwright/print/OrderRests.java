package lapwright.print;

import java.util.List;
import java.util.stream.Stream;
import lapwright.measure.MoneyStyle;
import lapwright.paperwork.OrderFacts.Attention;
import lapwright.paperwork.OrderFacts.LeftOut;
import lapwright.paperwork.OrderFacts.Reason;
import lapwright.paperwork.OrderPaper;
import lapwright.paperwork.OrderPaper.Kept;

/** What an order rests on: what goes back, what was left out, what to look at, and the caution. */
final class OrderRests {
  private final OrderPaper paper;
  private final MoneyStyle money;
  private final Page page;
  private final Shortening shortening;

  OrderRests(OrderPaper paper, MoneyStyle money, Page page, Shortening shortening) {
    this.paper = paper;
    this.money = money;
    this.page = page;
    this.shortening = shortening;
  }

  void write() {
    kept();
    if (paper.saving() != null && paper.jobs().size() > 1) {
      new SavingText(paper.saving(), money, page).write();
    }
    leftOut();
    attention();
    page.blank();
    page.text(Cautions.DESIGN, 0, 0);
  }

  private void kept() {
    Kept kept = paper.kept();
    if (kept.pieces() > 0) {
      page.blank();
      page.text(
          "Back to the rack: "
              + Phrases.count(kept.pieces(), "offcut", "offcuts")
              + ", "
              + page.length(kept.length())
              + " in all"
              + (kept.worth().isZero()
                  ? ""
                  : ", worth " + money.print(kept.worth()) + " at today's price by length")
              + ". The cost does not count on it.",
          0,
          2);
    }
  }

  private void leftOut() {
    if (paper.leftOut().isEmpty()
        && paper.takenAsFirm().isEmpty()
        && paper.withoutDueDay().isEmpty()) {
      return;
    }
    if (shortening.other() == 0) {
      page.blank();
      page.text(
          "Left out: "
              + Phrases.jobs(paper.leftOut().size())
              + "; without status or due day: "
              + Phrases.jobs(
                  Stream.concat(paper.takenAsFirm().stream(), paper.withoutDueDay().stream())
                      .distinct()
                      .count())
              + " (--all)",
          0,
          2);
      return;
    }
    page.heading("Left out, and taken for granted");
    for (Reason reason : Reason.values()) {
      jobs(
          why(reason),
          paper.leftOut().stream()
              .filter(job -> job.reason() == reason)
              .map(LeftOut::job)
              .toList());
    }
    jobs("No status written, so taken as firm", paper.takenAsFirm());
    jobs("No due day written, so planned last", paper.withoutDueDay());
  }

  private static String why(Reason reason) {
    return switch (reason) {
      case BID -> "A bid, so not bought";
      case DONE -> "Done";
      case HELD_BACK -> "Held back by the order";
      case DUE_LATER -> "Due after the order's last day";
      case NOT_ASKED_FOR -> "Not among the jobs asked for";
    };
  }

  private void jobs(String why, List<String> jobs) {
    if (jobs.isEmpty()) {
      return;
    }
    int shown = Shortening.shown(jobs.size(), shortening.other());
    List<String> some =
        jobs.subList(0, shown).stream()
            .map(job -> page.words().shorten(page.words().clean(job), page.width() / 2))
            .toList();
    String names =
        shown == jobs.size()
            ? Phrases.list(some)
            : String.join(", ", some) + " and " + (jobs.size() - shown) + " more (--all)";
    page.text(why + ": " + names, 2, 4);
  }

  private void attention() {
    if (paper.attention().isEmpty()) {
      return;
    }
    page.heading("Attention");
    int shown = Shortening.shown(paper.attention().size(), Math.max(1, shortening.other()));
    for (Attention attention : paper.attention().subList(0, shown)) {
      page.warning("! " + attention.what() + ": " + attention.advice() + ".", 2, 4);
    }
    if (shown < paper.attention().size()) {
      page.warning("! and " + (paper.attention().size() - shown) + " more (--all)", 2, 4);
    }
  }
}

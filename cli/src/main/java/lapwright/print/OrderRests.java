package lapwright.print;

import java.util.List;
import java.util.stream.Stream;
import lapwright.measure.MoneyStyle;
import lapwright.paperwork.OrderFacts.Attention;
import lapwright.paperwork.OrderFacts.Reason;
import lapwright.paperwork.OrderPaper;
import lapwright.paperwork.OrderPaper.Kept;

/** What an order rests on: what goes back, what was left out, what to look at, and the caution. */
final class OrderRests {
  private static final int FEW_NAMES = 3;

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
    // Each of these begins with what it is about, so they stand close together.
    kept();
    if (paper.saving() != null && paper.jobs().size() > 1) {
      new SavingText(paper.saving(), money, page).write();
    }
    new JointText(paper.joints(), money, page).write();
    leftOut();
    attention();
    page.blank();
    page.text(Cautions.DESIGN, 0, 0);
  }

  private void kept() {
    Kept kept = paper.kept();
    if (kept.pieces() > 0) {
      page.text(
          "Back to the rack: "
              + Phrases.count(kept.pieces(), "offcut", "offcuts")
              + ", "
              + page.length(kept.length())
              + (kept.worth().isZero()
                  ? "."
                  : ", worth " + money.print(kept.worth()) + ", not in the cost."),
          0,
          2);
    }
  }

  private void leftOut() {
    page.blank();
    jobs(
        "Left out: ",
        paper.leftOut().stream().map(job -> named(job.job()) + " (" + why(job.reason()) + ")"));
    jobs("Taken as firm, for no status is written: ", named(paper.takenAsFirm()));
    jobs("Planned last, for no due day is written: ", named(paper.withoutDueDay()));
  }

  private static String why(Reason reason) {
    return switch (reason) {
      case BID -> "a bid";
      case DONE -> "done";
      case HELD_BACK -> "held back by the order";
      case DUE_LATER -> "due after the order's last day";
      case NOT_ASKED_FOR -> "not asked for";
    };
  }

  private Stream<String> named(List<String> jobs) {
    return jobs.stream().map(this::named);
  }

  private String named(String job) {
    return page.words().shorten(page.words().clean(job), page.width() / 2);
  }

  private void jobs(String what, Stream<String> named) {
    List<String> jobs = named.toList();
    if (jobs.isEmpty()) {
      return;
    }
    int shown = Shortening.shown(jobs.size(), Math.max(FEW_NAMES, shortening.other()));
    String names =
        shown == jobs.size()
            ? Phrases.list(jobs)
            : String.join(", ", jobs.subList(0, shown))
                + " and "
                + (jobs.size() - shown)
                + " more (--all)";
    page.text(what + names + ".", 0, 2);
  }

  private void attention() {
    if (paper.attention().isEmpty()) {
      return;
    }
    page.heading("Attention");
    int shown = Shortening.shown(paper.attention().size(), Math.max(1, shortening.other()));
    for (Attention attention : paper.attention().subList(0, shown)) {
      String advice = attention.advice();
      page.warning("! " + attention.what() + (advice.isEmpty() ? "" : ": " + advice) + ".", 2, 4);
    }
    if (shown < paper.attention().size()) {
      page.warning("! and " + (paper.attention().size() - shown) + " more (--all)", 2, 4);
    }
  }
}

package lapwright.print;

import java.util.ArrayList;
import java.util.List;
import lapwright.compare.ItemSaving;
import lapwright.compare.MaterialSaving;
import lapwright.compare.Saving;
import lapwright.measure.Money;
import lapwright.measure.MoneyStyle;
import lapwright.measure.Percent;

/** What ordering for all jobs together saved, an honest nothing included. */
final class SavingText {
  private final Saving saving;
  private final MoneyStyle money;
  private final Page page;

  SavingText(Saving saving, MoneyStyle money, Page page) {
    this.saving = saving;
    this.money = money;
    this.page = page;
  }

  void write() {
    page.text("Saved by combining: " + saved() + " " + proof() + cash(), 0, 2);
    for (MaterialSaving lacking : saving.withoutComparison()) {
      page.text(
          "Job by job there is no plan for "
              + lacking.material()
              + ": the jobs before "
              + lacking.firstWithoutPlan()
              + " leave it too little. There, combining is what makes the order possible.",
          2,
          2);
    }
  }

  private String saved() {
    List<String> parts = new ArrayList<>();
    if (!saving.cost().isZero()) {
      Money jobByJob =
          new Money(
                  saving.materials().stream()
                      .filter(MaterialSaving::priced)
                      .map(MaterialSaving::jobByJob)
                      .mapToLong(one -> one == null ? 0 : one.cost())
                      .reduce(0, Math::addExact))
              .plus(
                  saving.items().stream()
                      .filter(ItemSaving::priced)
                      .map(item -> new Money(item.jobByJob()))
                      .reduce(Money.ZERO, Money::plus));
      Percent share = Percent.of(saving.cost().tenThousandths(), jobByJob.tenThousandths());
      parts.add(
          money.print(saving.cost())
              + " ("
              + share.print()
              + ") of the "
              + money.print(jobByJob)
              + " that job by job would cost");
    }
    if (!saving.length().isZero()) {
      boolean priced = saving.hasMoney();
      parts.add(page.length(saving.length()) + " of stock" + (priced ? " without a price" : ""));
    }
    return parts.isEmpty()
        ? "nothing; job by job, the first due first, costs the same."
        : Phrases.list(parts) + ".";
  }

  private String proof() {
    if (saving.proved()) {
      return "Both ways are proved.";
    }
    List<MaterialSaving> compared =
        saving.materials().stream().filter(material -> material.jobByJob() != null).toList();
    boolean together = compared.stream().allMatch(MaterialSaving::togetherProved);
    boolean jobByJob =
        compared.stream()
            .map(MaterialSaving::jobByJob)
            .allMatch(one -> one != null && one.proved());
    if (together && jobByJob) {
      return "Both ways are proved where they can be compared.";
    }
    if (together) {
      return "This order is proved, job by job is not: the true saving may be smaller.";
    }
    return jobByJob
        ? "Job by job is proved, this order is not: the true saving may be larger."
        : "Neither way is proved for every material.";
  }

  private String cash() {
    Money less = saving.cash();
    if (less.equals(saving.cost())) {
      return "";
    }
    boolean more = less.compareTo(Money.ZERO) < 0;
    return " To pay now: "
        + money.print(more ? Money.ZERO.minus(less) : less)
        + (more ? " more" : " less")
        + " than job by job.";
  }
}

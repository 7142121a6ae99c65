package lapwright.print;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import lapwright.compare.JointChoice;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.measure.MoneyStyle;
import lapwright.measure.Percent;

/** What choosing the joints of runs was worth, an honest nothing included. */
final class JointText {
  private final List<JointChoice.Answer> answers;
  private final MoneyStyle money;
  private final Page page;

  JointText(List<JointChoice.Answer> answers, MoneyStyle money, Page page) {
    this.answers = answers;
    this.money = money;
    this.page = page;
  }

  void write() {
    if (answers.isEmpty()) {
      return;
    }
    page.text("Saved by choosing joints: " + saved() + " " + oneMore() + " " + proof(), 0, 2);
  }

  /** Against whole sticks and a closing piece, offcuts used and all that cut at the least cost. */
  private String saved() {
    List<String> some = new ArrayList<>();
    for (JointChoice.Answer answer : answers) {
      JointChoice.OtherWay full = answer.fullSticks();
      if (full != null && answer.saved() > 0) {
        some.add(
            (full.proved() ? "" : "at most ")
                + amount(answer, answer.saved())
                + " ("
                + Percent.of(answer.saved(), full.cost()).print()
                + ")"
                + on(answer));
      }
    }
    List<String> none = named(each -> each.fullSticks() != null && each.saved() == 0);
    List<String> never = named(each -> each.fullSticks() == null);
    List<String> sentences = new ArrayList<>();
    if (!some.isEmpty()) {
      sentences.add(
          Phrases.list(some)
              + " against full sticks and a closing piece, cut at the least cost as well"
              + (none.isEmpty() ? "." : "; nothing on " + Phrases.list(none) + "."));
    } else if (!none.isEmpty()) {
      sentences.add("nothing; full sticks and a closing piece cost the same" + onAll(none) + ".");
    }
    if (!never.isEmpty()) {
      sentences.add(
          "On "
              + Phrases.list(never)
              + " the rules leave no full sticks and closing piece to compare with.");
    }
    return String.join(" ", sentences);
  }

  private String oneMore() {
    List<String> some = new ArrayList<>();
    for (JointChoice.Answer answer : answers) {
      JointChoice.OtherWay more = answer.oneMore();
      if (more != null && answer.oneMoreWouldSave() > 0) {
        some.add(
            (more.proved() ? "" : "at least ")
                + amount(answer, answer.oneMoreWouldSave())
                + on(answer));
      }
    }
    boolean found =
        answers.stream().allMatch(each -> each.oneMore() == null || each.oneMore().proved());
    List<String> notPlanned = named(each -> each.oneMore() == null);
    String unknown =
        notPlanned.isEmpty()
            ? ""
            : " On " + Phrases.list(notPlanned) + " that was not planned, the time was over.";
    return (some.isEmpty()
            ? "One more joint a line would save nothing" + (found ? "." : ", as far as was found.")
            : "One more joint a line would save "
                + Phrases.list(some)
                + "; it is not taken unless the run says extra-joints: 1.")
        + unknown;
  }

  private String proof() {
    return answers.stream().allMatch(JointChoice.Answer::proved)
        ? "All of it is proved."
        : "Not every plan that this compares is proved.";
  }

  private List<String> named(Predicate<JointChoice.Answer> which) {
    return answers.stream().filter(which).map(answer -> answer.plan().material()).toList();
  }

  /** A material is named where there is more than one. */
  private String on(JointChoice.Answer answer) {
    return answers.size() == 1 ? "" : " on " + answer.plan().material();
  }

  private String onAll(List<String> materials) {
    return materials.size() == answers.size() ? "" : " on " + Phrases.list(materials);
  }

  private String amount(JointChoice.Answer answer, long units) {
    return answer.plan().order().isPriced()
        ? money.print(new Money(units))
        : page.length(Length.ofUnits(units)) + " of stock";
  }
}

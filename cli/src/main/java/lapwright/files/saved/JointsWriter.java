package lapwright.files.saved;

import lapwright.compare.JointChoice;
import lapwright.measure.Length;
import lapwright.measure.Money;
import lapwright.plan.Proof;
import org.jspecify.annotations.Nullable;

/** Writes what choosing the joints of runs was worth, by material; for readers. */
final class JointsWriter {
  private final Json json;

  JointsWriter(Json json) {
    this.json = json;
  }

  void write(JointChoice.Answer answer) {
    boolean priced = answer.plan().order().isPriced();
    json.words("material", answer.plan().material());
    way("planned", new JointChoice.OtherWay(answer.plan().cost(), isProved(answer)), priced);
    way("fullSticks", answer.fullSticks(), priced);
    if (answer.fullSticks() != null) {
      amount("saved", answer.saved(), priced);
    }
    way("oneMoreJoint", answer.oneMore(), priced);
    if (answer.oneMore() != null) {
      amount("oneMoreWouldSave", answer.oneMoreWouldSave(), priced);
    }
  }

  private static boolean isProved(JointChoice.Answer answer) {
    return answer.plan().proof() == Proof.PROVED;
  }

  /** Left out where the rules of the runs do not allow it, or no such plan was found. */
  private void way(String field, JointChoice.@Nullable OtherWay way, boolean priced) {
    if (way != null) {
      json.object(
          field,
          () -> {
            amount("cost", way.cost(), priced);
            json.truth("proved", way.proved());
          });
    }
  }

  private void amount(String field, long value, boolean priced) {
    if (priced) {
      json.money(field, new Money(value));
    } else {
      json.mm(field + "Mm", Length.ofUnits(value));
    }
  }
}

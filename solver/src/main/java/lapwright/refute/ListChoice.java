package lapwright.refute;

import java.util.ArrayList;
import java.util.List;
import lapwright.colgen.Pattern;
import lapwright.effort.Effort;
import lapwright.mip.IntegerModel;
import lapwright.mip.IntegerResult;
import lapwright.mip.Outcome;

/**
 * Asks an engine to choose from a list of patterns: sum_a a_i x_a = d_i, sum_{a of j} x_a = n_j, x
 * whole.
 */
final class ListChoice {
  private ListChoice() {}

  static Refuter.Choice of(Question question, List<Pattern> list, long mostNodes, Effort effort) {
    if (list.isEmpty()) {
      return new Refuter.Choice(question.isAnswered() ? List.of() : null, !question.isAnswered());
    }
    try (IntegerModel model = new IntegerModel()) {
      for (int i = 0; i < question.items(); i++) {
        model.addRow(question.demand(i), question.demand(i));
      }
      for (int j = 0; j < question.stocks(); j++) {
        model.addRow((double) question.sticks(j), (double) question.sticks(j));
      }
      for (Pattern pattern : list) {
        int column = model.addColumn(0, 0, question.mostTimes(pattern));
        for (int k = 0; k < pattern.kinds(); k++) {
          model.setCoefficient(pattern.item(k), column, pattern.count(k));
        }
        model.setCoefficient(question.items() + pattern.stock(), column, 1);
      }
      IntegerResult result = model.solve(mostNodes, effort.remainingNanos());
      if (!result.outcome().hasSolution()) {
        return new Refuter.Choice(null, result.outcome() == Outcome.INFEASIBLE);
      }
      List<Pattern> chosen = new ArrayList<>();
      for (int at = 0; at < list.size(); at++) {
        for (long k = 0; k < result.values().get(at); k++) {
          chosen.add(list.get(at));
        }
      }
      return new Refuter.Choice(question.isSolvedBy(chosen) ? chosen : null, false);
    }
  }
}

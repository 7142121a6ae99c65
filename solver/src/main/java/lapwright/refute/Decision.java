package lapwright.refute;

import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.colgen.Pattern;

/**
 * A side of a decision about patterns that hold some items: at most so many are cut, or at least.
 *
 * @param holding items with the least count of each
 * @param times t of "at most t", or of "at least t"
 */
record Decision(Pattern holding, long times, boolean atMost) {

  boolean holds(Pattern pattern) {
    return held(pattern) == holding.kinds();
  }

  /** How many of the items the pattern holds often enough. */
  int held(Pattern pattern) {
    int held = 0;
    for (int k = 0; k < holding.kinds(); k++) {
      if (pattern.countOf(holding.item(k)) >= holding.count(k)) {
        held++;
      }
    }
    return held;
  }

  /** True when no pattern that holds the items may be cut at all. */
  boolean isNever() {
    return atMost && times == 0;
  }

  /** True when all of each item must be in the one pattern that holds them. */
  boolean isTogether(Question question) {
    boolean unique = !atMost && times == 1;
    for (int k = 0; k < holding.kinds(); k++) {
      unique &= question.demand(holding.item(k)) == 1;
    }
    return unique;
  }

  /** True when the decision alone forbids a pattern. */
  boolean forbids(Pattern pattern, Question question) {
    if (isNever()) {
      return holds(pattern);
    }
    if (isTogether(question)) {
      int held = held(pattern);
      return held > 0 && held < holding.kinds();
    }
    return false;
  }

  /** True when it says no more than which patterns it forbids. */
  boolean isAllInForbidding(Question question) {
    return isNever() || isTogether(question);
  }

  SortedMap<Long, Integer> bySize(Question question) {
    SortedMap<Long, Integer> bySize = new TreeMap<>();
    for (int k = 0; k < holding.kinds(); k++) {
      bySize.put((long) question.size(holding.item(k)), holding.count(k));
    }
    return bySize;
  }
}

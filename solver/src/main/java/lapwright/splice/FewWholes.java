package lapwright.splice;

import java.util.List;

/**
 * Splits of whole sticks and one closing piece where there are too many lengths of whole sticks to
 * list all splits: cheap ones are sought among those of a few lengths, the least weight is taken
 * over all splits with joints anywhere.
 */
record FewWholes(GraphChoice some, AnywhereChoice all) implements Choice {
  @Override
  public List<Long> cheapest(LengthPrices prices) {
    return some.cheapest(prices);
  }

  @Override
  public long leastWeight(StepWeights weights, long cut) {
    return all.leastWeight(weights, cut);
  }

  @Override
  public List<Long> lightest(StepWeights weights, long cut) {
    return some.lightest(weights, cut);
  }

  @Override
  public List<Long> lengths() {
    return some.lengths();
  }
}

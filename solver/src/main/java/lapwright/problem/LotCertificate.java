package lapwright.problem;

import java.util.List;
import java.util.Objects;

/**
 * Evidence for a lower bound on the cost of a {@link LotProblem}: a tree of decisions about lots
 * and, below them, about packs.
 */
public sealed interface LotCertificate {
  /**
   * A leaf: for each lot weights for every length there is, all of one scale. As {@link
   * SpliceCertificate.Weights}, but that a stick carries the weights of its lot, a unit adds the
   * least that it weighs in a lot that it may still come from, and each free piece the least that
   * it weighs in a lot that can give it.
   *
   * @param lots weights by lot, of the same scale
   */
  record Weights(List<SpliceCertificate.Weights> lots) implements LotCertificate {
    public Weights {
      lots = List.copyOf(lots);
    }
  }

  /** A decision: a unit comes from a lot, or from another. */
  record LotSplit(int unit, int lot, LotCertificate within, LotCertificate outside)
      implements LotCertificate {
    public LotSplit {
      Objects.requireNonNull(within);
      Objects.requireNonNull(outside);
    }
  }

  /** A decision: at most so many pieces of a free item come from a lot, or more. */
  record PieceSplit(int item, int lot, int pieces, LotCertificate fewer, LotCertificate more)
      implements LotCertificate {
    public PieceSplit {
      Objects.requireNonNull(fewer);
      Objects.requireNonNull(more);
    }
  }

  /**
   * A leaf that bounds each lot by itself, with what must come from it.
   *
   * @param decided for each unit its lot, for each lot the free pieces that it gives at least
   */
  record ByLot(LotProblem.Sharing decided) implements LotCertificate {
    public ByLot {
      Objects.requireNonNull(decided);
    }
  }

  /** A decision about the packs of some stocks of a lot together. */
  record PackSplit(
      int lot, List<Integer> stocks, int packs, LotCertificate fewer, LotCertificate more)
      implements LotCertificate {
    public PackSplit {
      stocks = List.copyOf(stocks);
      Objects.requireNonNull(fewer);
      Objects.requireNonNull(more);
    }
  }
}

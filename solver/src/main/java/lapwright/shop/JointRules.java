package lapwright.shop;

import java.util.Objects;
import lapwright.measure.Length;
import org.jspecify.annotations.Nullable;

/**
 * What the drawings allow where a run is joined. Where a run has expansion gaps, the rules speak of
 * each unbroken stretch between them.
 *
 * @param joint how pieces meet
 * @param places where joints may stand
 * @param pieces how long pieces may be
 * @param count how many joints
 * @param closing the closing piece
 * @param stagger joints of neighbouring lines of the same mark are at least this far apart; 0
 *     without a rule
 * @param expansion gaps that interrupt the run; null without any
 */
public record JointRules(
    Joint joint,
    JointPlaces places,
    Pieces pieces,
    JointCount count,
    ClosingPiece closing,
    Length stagger,
    @Nullable Expansion expansion) {
  public JointRules {
    Objects.requireNonNull(joint);
    Objects.requireNonNull(places);
    Objects.requireNonNull(pieces);
    Objects.requireNonNull(count);
    Objects.requireNonNull(closing);
    if (stagger.units() < 0) {
      throw new IllegalArgumentException("a stagger is negative");
    }
  }

  /** Joints anywhere, the fewest of them, pieces in steps of {@code step}, and no other rule. */
  public static JointRules of(Joint joint, Length step) {
    return new JointRules(
        joint,
        new JointPlaces.Anywhere(),
        new Pieces(Length.ZERO, null, null, step),
        JointCount.FEWEST,
        ClosingPiece.AT_END,
        Length.ZERO,
        null);
  }

  public JointRules at(JointPlaces other) {
    return new JointRules(joint, other, pieces, count, closing, stagger, expansion);
  }

  public JointRules with(Pieces other) {
    return new JointRules(joint, places, other, count, closing, stagger, expansion);
  }

  public JointRules with(JointCount other) {
    return new JointRules(joint, places, pieces, other, closing, stagger, expansion);
  }

  public JointRules with(ClosingPiece other) {
    return new JointRules(joint, places, pieces, count, other, stagger, expansion);
  }

  public JointRules staggered(Length apart) {
    return new JointRules(joint, places, pieces, count, closing, apart, expansion);
  }

  public JointRules expanding(@Nullable Expansion gaps) {
    return new JointRules(joint, places, pieces, count, closing, stagger, gaps);
  }

  /** How pieces meet. */
  public sealed interface Joint {
    /**
     * End to end.
     *
     * @param gap the greatest gap that the drawings allow; each of the two pieces gives at most
     *     half of it
     */
    record Butt(Length gap) implements Joint {
      public Butt {
        if (gap.units() < 0) {
          throw new IllegalArgumentException("a gap is negative");
        }
      }
    }

    /** One over the other, by just this much. */
    record Lap(Length lap) implements Joint {
      public Lap {
        if (lap.units() < 0) {
          throw new IllegalArgumentException("a lap is negative");
        }
      }
    }
  }

  /**
   * How long pieces may be.
   *
   * @param shortest no piece is shorter; 0 without a rule
   * @param shortestAtEnd the same for the first and the last piece, instead of {@code shortest};
   *     null when that holds for them too
   * @param longest no piece is longer; null without a rule
   * @param step pieces come in whole multiples of it, but for whole sticks and closing pieces;
   *     positive
   */
  public record Pieces(
      Length shortest, @Nullable Length shortestAtEnd, @Nullable Length longest, Length step) {
    public Pieces {
      if (shortest.units() < 0
          || step.units() <= 0
          || (shortestAtEnd != null && shortestAtEnd.units() < 0)
          || (longest != null && longest.units() <= 0)) {
        throw new IllegalArgumentException("limits of pieces that are negative");
      }
    }

    /** The least length of the first and the last piece. */
    public Length leastAtEnd() {
      return shortestAtEnd == null ? shortest : shortestAtEnd;
    }
  }

  /** How many joints a line may have. */
  public sealed interface JointCount {
    JointCount FEWEST = new BeyondFewest(0);

    /** So many more than the fewest. */
    record BeyondFewest(int extra) implements JointCount {
      public BeyondFewest {
        if (extra < 0) {
          throw new IllegalArgumentException("extra joints " + extra);
        }
      }
    }

    /** Outright. */
    record AtMost(int joints) implements JointCount {
      public AtMost {
        if (joints < 0) {
          throw new IllegalArgumentException("most joints " + joints);
        }
      }
    }
  }

  /**
   * The closing piece of a line: the last to be laid.
   *
   * @param where at which end it lies
   * @param othersWhole true when all other pieces are whole sticks ({@code full-sticks})
   * @param leaveLong it goes out this much too long and is cut on the building
   */
  public record ClosingPiece(Where where, boolean othersWhole, Length leaveLong) {
    public static final ClosingPiece AT_END = new ClosingPiece(Where.END, false, Length.ZERO);

    public ClosingPiece {
      Objects.requireNonNull(where);
      if (leaveLong.units() < 0) {
        throw new IllegalArgumentException("a closing piece is left long by less than nothing");
      }
    }
  }

  /** At which end the closing piece lies. */
  public enum Where {
    END("end"),
    START("start"),
    EITHER("either");

    private final String word;

    Where(String word) {
      this.word = word;
    }

    /** The word that files use. */
    public String word() {
      return word;
    }
  }

  /**
   * Expansion gaps.
   *
   * @param longestUnbroken no stretch between two gaps, or a gap and an end, is longer
   * @param gap how wide the gap is
   */
  public record Expansion(Length longestUnbroken, Length gap) {
    public Expansion {
      if (longestUnbroken.units() <= 0 || gap.units() < 0) {
        throw new IllegalArgumentException("expansion gaps of a negative length");
      }
    }
  }
}

package lapwright.check;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/**
 * What whole packs cost at least that carry a given weight: min sum P_j y_j with sum c_j y_j &gt;=
 * weight, L_j &lt;= y_j &lt;= Y_j, y whole.
 *
 * <p>Why that bounds a plan: no stick gives pieces of more weight than the greatest weight of its
 * kind, so that the packs y of any plan carry at least what all pieces weigh together, and its cost
 * is that of one of the y looked at. Kinds whose least number is left out only allow more.
 *
 * <p>Tries numbers of packs, most first, of the kind that carries most for its price, then of the
 * next, and leaves a branch when even parts of packs could not carry the rest for less than the
 * best so far. With one pack fewer of a kind the same weight falls to kinds that carry less for
 * their price, so that parts only become dearer: the first number that is too dear ends a loop.
 * More packs than cost as much as the best so far are not looked at, as they cannot be better.
 */
final class LeastPacks {
  private static final int MOST_TRIES = 12_000_000;

  private final List<Kind> kinds;
  private long best;
  private int tries;

  /**
   * Packs that are alike.
   *
   * @param cost of a pack
   * @param carries the greatest weight of what a pack gives
   * @param least packs that are used at least
   * @param most packs that can be had, or {@link PackGroups#UNLIMITED}
   */
  record Kind(long cost, BigInteger carries, long least, long most) {}

  private LeastPacks(List<Kind> kinds, long ceiling) {
    this.kinds = kinds;
    this.best = ceiling;
  }

  /**
   * The least cost, or {@code ceiling} where nothing cheaper carries the weight; empty when trying
   * takes too long.
   */
  static OptionalLong cost(List<Kind> all, BigInteger weight, long ceiling) {
    long spent = 0;
    BigInteger rest = weight;
    boolean carriesAnything = false;
    List<Kind> open = new ArrayList<>();
    for (Kind kind : all) {
      boolean isFree = kind.cost() == 0 && kind.carries().signum() > 0;
      boolean isEndless = isFree && kind.most() == PackGroups.UNLIMITED;
      carriesAnything |= isEndless;
      long sure = isFree && !isEndless ? kind.most() : kind.least();
      spent = Math.addExact(spent, Math.multiplyExact(kind.cost(), sure));
      rest = rest.subtract(kind.carries().multiply(BigInteger.valueOf(sure)));
      if (!isFree && kind.carries().signum() > 0 && kind.most() > kind.least()) {
        long more =
            kind.most() == PackGroups.UNLIMITED ? Long.MAX_VALUE : kind.most() - kind.least();
        open.add(new Kind(kind.cost(), kind.carries(), 0, more));
      }
    }
    if (carriesAnything) {
      return OptionalLong.of(Math.min(spent, ceiling));
    }
    open.sort(
        (a, b) ->
            BigInteger.valueOf(a.cost())
                .multiply(b.carries())
                .compareTo(BigInteger.valueOf(b.cost()).multiply(a.carries())));
    LeastPacks search = new LeastPacks(open, ceiling);
    return search.tryFrom(0, spent, rest) ? OptionalLong.of(search.best) : OptionalLong.empty();
  }

  private boolean tryFrom(int at, long spent, BigInteger rest) {
    if (++tries > MOST_TRIES) {
      return false;
    }
    if (rest.signum() <= 0) {
      best = Math.min(best, spent);
      return true;
    }
    if (at == kinds.size() || spent >= best) {
      return true;
    }
    Kind kind = kinds.get(at);
    BigInteger enough = roundedUp(rest, kind.carries());
    BigInteger affordable = BigInteger.valueOf((best - spent) / kind.cost() + 1);
    long packs = enough.min(BigInteger.valueOf(kind.most())).min(affordable).longValueExact();
    for (; packs >= 0; packs--) {
      long cost = Math.addExact(spent, Math.multiplyExact(packs, kind.cost()));
      BigInteger left = rest.subtract(kind.carries().multiply(BigInteger.valueOf(packs)));
      if (left.signum() > 0 && !canBeat(at + 1, cost, left)) {
        break;
      }
      if (!tryFrom(at + 1, cost, left)) {
        return false;
      }
    }
    return true;
  }

  /** False when parts of packs of the kinds from there on carry the rest for no less. */
  private boolean canBeat(int from, long spent, BigInteger weight) {
    long cost = spent;
    BigInteger rest = weight;
    for (int at = from; at < kinds.size() && cost < best; at++) {
      Kind kind = kinds.get(at);
      if (roundedUp(rest, kind.carries()).compareTo(BigInteger.valueOf(kind.most())) <= 0) {
        BigInteger parts =
            roundedUp(rest.multiply(BigInteger.valueOf(kind.cost())), kind.carries());
        return parts.compareTo(BigInteger.valueOf(best - cost)) < 0;
      }
      cost = Math.addExact(cost, Math.multiplyExact(kind.cost(), kind.most()));
      rest = rest.subtract(kind.carries().multiply(BigInteger.valueOf(kind.most())));
    }
    return false;
  }

  private static BigInteger roundedUp(BigInteger a, BigInteger b) {
    return a.add(b).subtract(BigInteger.ONE).divide(b);
  }
}

package lapwright.plan;

import java.util.Objects;

/**
 * Packs of one offer that are bought.
 *
 * @param supply key of the offer
 * @param packs at least 1
 */
public record Purchase(String supply, int packs) {
  public Purchase {
    Objects.requireNonNull(supply);
    if (packs < 1) {
      throw new IllegalArgumentException("purchase of " + packs + " packs");
    }
  }
}

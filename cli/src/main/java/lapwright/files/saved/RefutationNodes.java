package lapwright.files.saved;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.plan.Refutation;
import org.jspecify.annotations.Nullable;

/** The nodes of a certificate that show, pattern by pattern, that sticks do not suffice. */
final class RefutationNodes {
  private RefutationNodes() {}

  static List<Refutation> branches(Refutation node) {
    if (node instanceof Refutation.HoldingSplit split) {
      return List.of(split.fewer(), split.more());
    }
    Refutation rest = ((Refutation.Sieve) node).rest();
    return rest == null ? List.of() : List.of(rest);
  }

  static void write(Json json, Refutation node, List<Integer> branches, LengthStyle style) {
    if (node instanceof Refutation.HoldingSplit split) {
      json.list(
          "holding",
          split.holding().entrySet(),
          held -> {
            json.length("length", held.getKey(), style);
            json.number("count", held.getValue());
          });
      json.number("times", split.times());
      json.number("atMost", branches.get(0));
      json.number("more", branches.get(1));
      return;
    }
    Refutation.Sieve sieve = (Refutation.Sieve) node;
    CertificateNodes.weights(json, sieve.weights(), style);
    if (!sieve.cuts().isEmpty()) {
      json.list("cuts", sieve.cuts(), cut -> write(json, cut, style));
    }
    if (!sieve.decided().isEmpty()) {
      json.list("decided", sieve.decided(), weight -> json.number("weight", weight));
    }
    if (!branches.isEmpty()) {
      json.number("rest", branches.get(0));
    }
  }

  private static void write(Json json, Refutation.CutTimes cut, LengthStyle style) {
    json.number("times", cut.times());
    json.number("divisor", cut.divisor());
    json.number("constant", cut.constant());
    json.list(
        "multipliers",
        cut.multipliers().entrySet(),
        multiplier -> {
          json.length("length", multiplier.getKey(), style);
          json.number("multiplier", multiplier.getValue());
        });
  }

  static Refutation read(PlanFields node, int at, @Nullable Object[] made) {
    if (node.has("holding")) {
      SortedMap<Length, Integer> holding = new TreeMap<>();
      node.list("holding", held -> holding.put(held.mm("lengthMm"), held.count("count")));
      return new Refutation.HoldingSplit(
          holding,
          node.count("times"),
          CertificateNodes.branch(node, "atMost", at, made, Refutation.class),
          CertificateNodes.branch(node, "more", at, made, Refutation.class));
    }
    List<Refutation.CutTimes> cuts = new ArrayList<>();
    if (node.has("cuts")) {
      cuts.addAll(node.list("cuts", RefutationNodes::cut));
    }
    List<Long> decided = new ArrayList<>();
    if (node.has("decided")) {
      decided.addAll(node.list("decided", weight -> weight.number("weight")));
    }
    return new Refutation.Sieve(
        CertificateNodes.weights(node),
        cuts,
        decided,
        node.has("rest")
            ? CertificateNodes.branch(node, "rest", at, made, Refutation.class)
            : null);
  }

  private static Refutation.CutTimes cut(PlanFields cut) {
    SortedMap<Length, Long> multipliers = new TreeMap<>();
    cut.list(
        "multipliers",
        multiplier -> multipliers.put(multiplier.mm("lengthMm"), multiplier.number("multiplier")));
    return new Refutation.CutTimes(
        cut.number("times"), cut.number("divisor"), cut.number("constant"), multipliers);
  }
}

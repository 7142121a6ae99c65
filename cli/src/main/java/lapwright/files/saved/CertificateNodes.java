package lapwright.files.saved;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.plan.Certificate;
import lapwright.plan.Refutation;
import org.jspecify.annotations.Nullable;

/**
 * A certificate's tree as a list: a deep tree would make a deeply nested file, which readers
 * refuse. Node 0 is the root; a node names the numbers of its branches, which are greater than its
 * own.
 */
final class CertificateNodes {
  private CertificateNodes() {}

  /**
   * One node.
   *
   * @param node a {@link Certificate} or a {@link Refutation}
   * @param branches numbers of its branches, in the order of {@link #branches}; empty for a leaf
   */
  private record Flat(int number, Object node, List<Integer> branches) {}

  static void write(Json json, String field, Certificate root, LengthStyle style) {
    json.list(field, flat(root), node -> write(json, node, style));
  }

  private static List<Flat> flat(Certificate root) {
    List<Flat> nodes = new ArrayList<>();
    Deque<Object> waiting = new ArrayDeque<>();
    waiting.add(root);
    int promised = 1;
    while (!waiting.isEmpty()) {
      Object next = waiting.remove();
      List<Integer> numbers = new ArrayList<>();
      for (Object branch : branches(next)) {
        numbers.add(promised++);
        waiting.add(branch);
      }
      nodes.add(new Flat(nodes.size(), next, numbers));
    }
    return nodes;
  }

  private static List<?> branches(Object node) {
    if (node instanceof Certificate.PackSplit split) {
      return List.of(split.fewer(), split.more());
    }
    if (node instanceof Certificate.LotSplit split) {
      return List.of(split.within(), split.outside());
    }
    if (node instanceof Certificate.PieceSplit split) {
      return List.of(split.fewer(), split.more());
    }
    if (node instanceof Certificate.NoPlan none) {
      return List.of(none.refutation());
    }
    if (node instanceof Refutation refutation) {
      return RefutationNodes.branches(refutation);
    }
    return node instanceof Certificate.ByLot byLot ? List.copyOf(byLot.lots().values()) : List.of();
  }

  private static void write(Json json, Flat flat, LengthStyle style) {
    json.number("node", flat.number());
    Object node = flat.node();
    if (node instanceof Certificate.PackSplit split) {
      json.wordList("supplies", split.supplies());
      json.number("packs", split.packs());
      json.number("atMost", flat.branches().get(0));
      json.number("more", flat.branches().get(1));
    } else if (node instanceof Certificate.LotSplit split) {
      json.words("job", split.job());
      json.wordsIfAny("mark", split.mark());
      json.wordList("lots", split.lots());
      json.number("within", flat.branches().get(0));
      json.number("outside", flat.branches().get(1));
    } else if (node instanceof Certificate.PieceSplit split) {
      json.length("length", split.length(), style);
      json.wordList("fromLots", split.lots());
      json.number("pieces", split.pieces());
      json.number("atMost", flat.branches().get(0));
      json.number("more", flat.branches().get(1));
    } else if (node instanceof Certificate.LotWeights leaf) {
      json.number("scale", leaf.scale());
      json.list(
          "weightsByLot",
          leaf.lots(),
          some -> {
            json.wordList("lots", some.lots());
            json.number("perUnit", some.perUnit());
            weights(json, some.weights(), style);
          });
    } else if (node instanceof Certificate.ByLot byLot) {
      List<String> lots = List.copyOf(byLot.lots().keySet());
      json.list(
          "byLot",
          lots,
          lot -> {
            json.words("lot", lot);
            json.number("bound", flat.branches().get(lots.indexOf(lot)));
          });
    } else if (node instanceof Certificate.RunWeights leaf) {
      json.number("scale", leaf.scale());
      json.number("perUnit", leaf.perUnit());
      weights(json, leaf.weights(), style);
    } else if (node instanceof Certificate.Weights leaf) {
      json.number("scale", leaf.scale());
      weights(json, leaf.weights(), style);
    } else if (node instanceof Certificate.NoPlan) {
      json.number("refuted", flat.branches().get(0));
    } else if (node instanceof Refutation refutation) {
      RefutationNodes.write(json, refutation, flat.branches(), style);
    }
  }

  static void weights(Json json, SortedMap<Length, Long> weights, LengthStyle style) {
    json.list(
        "weights",
        weights.entrySet(),
        weight -> {
          json.length("length", weight.getKey(), style);
          json.number("weight", weight.getValue());
        });
  }

  /** Reads the tree from its last node to its root, as branches have greater numbers. */
  static Certificate read(PlanFields material, String field) {
    List<PlanFields> nodes = material.list(field, node -> node);
    @Nullable Object[] made = new Object[nodes.size()];
    for (int i = nodes.size() - 1; i >= 0; i--) {
      PlanFields node = nodes.get(i);
      int at = i;
      made[i] = PlanReader.guarded(node, "node", () -> node(node, at, made));
    }
    if (made.length == 0) {
      throw material.damaged(field, "", "empty");
    }
    if (made[0] instanceof Certificate root) {
      return root;
    }
    throw material.damaged(field, "", "a root that is no certificate");
  }

  private static Object node(PlanFields node, int at, @Nullable Object[] made) {
    if (node.has("supplies")) {
      return new Certificate.PackSplit(
          node.wordList("supplies"),
          node.count("packs"),
          certificate(node, "atMost", at, made),
          certificate(node, "more", at, made));
    }
    if (node.has("lots")) {
      return new Certificate.LotSplit(
          node.words("job"),
          node.wordsIfAny("mark"),
          node.wordList("lots"),
          certificate(node, "within", at, made),
          certificate(node, "outside", at, made));
    }
    if (node.has("fromLots")) {
      return new Certificate.PieceSplit(
          node.mm("lengthMm"),
          node.wordList("fromLots"),
          node.count("pieces"),
          certificate(node, "atMost", at, made),
          certificate(node, "more", at, made));
    }
    if (node.has("weightsByLot")) {
      return new Certificate.LotWeights(
          node.number("scale"),
          node.list(
              "weightsByLot",
              some ->
                  new Certificate.LotWeights.OfLots(
                      some.wordList("lots"), weights(some), some.number("perUnit"))));
    }
    if (node.has("byLot")) {
      SortedMap<String, Certificate> lots = new TreeMap<>();
      node.list(
          "byLot",
          lot -> {
            if (lots.put(lot.words("lot"), certificate(lot, "bound", at, made)) != null) {
              throw lot.damaged("lot", lot.words("lot"), "stands twice");
            }
            return lot;
          });
      return new Certificate.ByLot(lots);
    }
    if (node.has("refuted")) {
      return new Certificate.NoPlan(branch(node, "refuted", at, made, Refutation.class));
    }
    if (!node.has("scale")) {
      return RefutationNodes.read(node, at, made);
    }
    SortedMap<Length, Long> weights = weights(node);
    return node.has("perUnit")
        ? new Certificate.RunWeights(node.number("scale"), weights, node.number("perUnit"))
        : new Certificate.Weights(node.number("scale"), weights);
  }

  static SortedMap<Length, Long> weights(PlanFields node) {
    SortedMap<Length, Long> weights = new TreeMap<>();
    node.list("weights", weight -> weights.put(weight.mm("lengthMm"), weight.number("weight")));
    return weights;
  }

  private static Certificate certificate(
      PlanFields node, String field, int parent, @Nullable Object[] made) {
    return branch(node, field, parent, made, Certificate.class);
  }

  /** Each branch is used once, so that a small file cannot stand for an endless tree. */
  static <T> T branch(
      PlanFields node, String field, int parent, @Nullable Object[] made, Class<T> kind) {
    int number = node.count(field);
    Object branch = number > parent && number < made.length ? made[number] : null;
    if (branch == null || !kind.isInstance(branch)) {
      throw node.damaged(
          field, Integer.toString(number), "no such branch, of another kind, or used before");
    }
    made[number] = null;
    return kind.cast(branch);
  }
}

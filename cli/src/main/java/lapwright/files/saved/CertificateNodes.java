package lapwright.files.saved;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import lapwright.plan.Certificate;
import org.jspecify.annotations.Nullable;

/**
 * A certificate's tree as a list: a deep tree would make a deeply nested file, which readers
 * refuse. Node 0 is the root; a decision names the numbers of its two branches, which are greater
 * than its own.
 */
final class CertificateNodes {
  private CertificateNodes() {}

  /**
   * One node; either a decision or a leaf.
   *
   * @param fewer number of the branch with at most so many packs; 0 for a leaf
   * @param more number of the branch with more; 0 for a leaf
   */
  record Flat(
      int number,
      Certificate.@Nullable PackSplit split,
      int fewer,
      int more,
      Certificate.@Nullable Weights leaf) {}

  static List<Flat> flat(Certificate root) {
    List<Flat> nodes = new ArrayList<>();
    Deque<Certificate> waiting = new ArrayDeque<>();
    waiting.add(root);
    int promised = 1;
    while (!waiting.isEmpty()) {
      Certificate next = waiting.remove();
      int number = nodes.size();
      if (next instanceof Certificate.PackSplit split) {
        nodes.add(new Flat(number, split, promised, promised + 1, null));
        promised += 2;
        waiting.add(split.fewer());
        waiting.add(split.more());
      } else if (next instanceof Certificate.Weights leaf) {
        nodes.add(new Flat(number, null, 0, 0, leaf));
      } else {
        throw new IllegalArgumentException(next.getClass().getSimpleName() + " is not saved");
      }
    }
    return nodes;
  }
}

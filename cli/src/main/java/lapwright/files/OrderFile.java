package lapwright.files;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapwright.files.source.Fields;
import lapwright.files.source.Findings;
import lapwright.files.source.Inputs;
import lapwright.files.source.Node;
import lapwright.files.source.Place;
import lapwright.files.source.Values;
import org.jspecify.annotations.Nullable;

/**
 * Where shop and jobs are, and which jobs an order takes: order.yaml, or the folder itself.
 *
 * @param dueUntil only jobs due until that day; null when any are taken
 * @param without names of jobs that are left out, and where they stand
 */
record OrderFile(Path shop, Path jobs, @Nullable LocalDate dueUntil, Map<String, Place> without) {
  static final List<String> FIELDS = List.of("shop", "jobs", "due-until", "without");

  /** Where kits are kept: beside the jobs. */
  Path kits() {
    return jobs.resolveSibling("kits");
  }

  /** Reads the file if there is one; null when it is wrong. */
  static @Nullable OrderFile read(Path folder, Inputs inputs) {
    boolean shopInside =
        inputs.treeFile(folder, "shop") == null && Files.isDirectory(folder.resolve("shop"));
    Path shop = shopInside ? folder.resolve("shop") : folder;
    Path jobs = folder.resolve("jobs");
    Path file = inputs.treeFile(folder, "order");
    if (file == null) {
      return new OrderFile(shop, jobs, null, Map.of());
    }
    Findings findings = inputs.findings();
    Node root = inputs.tree(file);
    Fields fields = root == null ? null : Fields.of(root, "", FIELDS, findings);
    if (fields == null) {
      return null;
    }
    Path shopThere = fields.has("shop") ? folder(folder, "shop", fields, findings) : shop;
    Path jobsThere = fields.has("jobs") ? folder(folder, "jobs", fields, findings) : jobs;
    LocalDate dueUntil = fields.day("due-until");
    Map<String, Place> without = new LinkedHashMap<>();
    Values values = new Values(findings);
    List<Node> names = fields.list("without");
    for (Node node : names == null ? new ArrayList<Node>() : names) {
      if (node instanceof Node.Scalar scalar) {
        String name = values.name(scalar.place(), "without", scalar.text());
        if (name != null) {
          without.put(name, scalar.place());
        }
      } else {
        findings.fault(node.place(), "without", "", "not a job's name", "List names of jobs.");
      }
    }
    return shopThere == null || jobsThere == null
        ? null
        : new OrderFile(shopThere, jobsThere, dueUntil, without);
  }

  private static @Nullable Path folder(
      Path folder, String field, Fields fields, Findings findings) {
    String typed = fields.words(field);
    if (typed == null) {
      return null;
    }
    try {
      Path path = folder.resolve(typed.replace('\\', '/'));
      if (Files.isDirectory(path)) {
        return path;
      }
    } catch (InvalidPathException e) {
      // Reported below like any folder that is not there.
    }
    findings.fault(
        fields.placeOf(field),
        field,
        typed,
        "there is no such folder",
        "Give the way from the folder of this file, such as ../../" + field + ".");
    return null;
  }
}

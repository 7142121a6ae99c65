package lapwright.files.source;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapwright.measure.Length;
import lapwright.measure.SafeSide;
import org.jspecify.annotations.Nullable;

/**
 * The fields of one mapping. Unknown fields and fields that stand twice are faults at once. A
 * getter gives null when the field is absent, or when it is wrong, which is a fault then.
 */
public final class Fields {
  private final Place place;
  private final String path;
  private final Findings findings;
  private final Values values;
  private final Map<String, Node.Entry> entries = new LinkedHashMap<>();

  private Fields(Place place, String path, Findings findings) {
    this.place = place;
    this.path = path;
    this.findings = findings;
    this.values = new Values(findings);
  }

  /**
   * The fields of {@code node}; null, and a fault, when it is no mapping.
   *
   * @param path the way to the node, for messages; empty for the whole file
   * @param known names of the fields that it may have
   */
  public static @Nullable Fields of(Node node, String path, List<String> known, Findings findings) {
    Node.Mapping mapping = mapping(node, path, findings);
    if (mapping == null) {
      return null;
    }
    Fields fields = new Fields(mapping.place(), path, findings);
    for (Node.Entry entry : mapping.entries()) {
      if (!known.contains(entry.key())) {
        findings.fault(
            entry.place(),
            fields.way(entry.key()),
            "",
            "unknown field",
            adviceForUnknown(entry, known));
      } else {
        fields.add(entry);
      }
    }
    return fields;
  }

  /** The entries of a mapping whose keys are names; null, and a fault, when it is no mapping. */
  public static @Nullable Fields named(Node node, String path, Findings findings) {
    Node.Mapping mapping = mapping(node, path, findings);
    if (mapping == null) {
      return null;
    }
    Fields fields = new Fields(mapping.place(), path, findings);
    for (Node.Entry entry : mapping.entries()) {
      String name = fields.values.name(entry.place(), path, entry.key());
      if (name != null) {
        fields.add(entry);
      }
    }
    return fields;
  }

  private static Node.@Nullable Mapping mapping(Node node, String path, Findings findings) {
    if (node instanceof Node.Mapping mapping) {
      return mapping;
    }
    if (node instanceof Node.Scalar scalar) {
      findings.fault(
          node.place(),
          path,
          scalar.text(),
          scalar.text().isEmpty() ? "nothing where fields belong" : "a text where fields belong",
          scalar.text().matches("(?s)\\s*[a-z-]+:\\S.*")
              ? "Write a space after the colon."
              : "Write fields as 'name: value', each on its own line.");
    } else {
      findings.fault(node.place(), path, "", "a list where fields belong", "Leave the dashes out.");
    }
    return null;
  }

  private void add(Node.Entry entry) {
    Node.Entry first = entries.putIfAbsent(entry.key(), entry);
    if (first != null) {
      findings.fault(
          entry.place(),
          way(entry.key()),
          "",
          "stands twice; first in line " + first.place().line(),
          "Put both together, or delete one.");
    }
  }

  private static String adviceForUnknown(Node.Entry entry, List<String> known) {
    boolean nothing = entry.value() instanceof Node.Scalar scalar && scalar.text().isEmpty();
    String key = entry.key();
    int colon = key.indexOf(':');
    if (colon > 0 && known.contains(key.substring(0, colon))) {
      return "Write a space after the colon: " + key.substring(0, colon) + ": ...";
    }
    String otherwise =
        nothing
            ? "A comma or colon inside words? Put the words in quotes."
            : "Known here: " + String.join(", ", known) + ".";
    return Nearest.advice(key, known, otherwise);
  }

  public Place place() {
    return place;
  }

  public List<Node.Entry> entries() {
    return List.copyOf(entries.values());
  }

  public boolean has(String field) {
    return entries.containsKey(field);
  }

  public Node.@Nullable Entry entry(String field) {
    return entries.get(field);
  }

  /** The way to a field, for messages. */
  public String way(String field) {
    return path.isEmpty() ? field : path + " > " + field;
  }

  /** The place of a field's value, or of the mapping when the field is absent. */
  public Place placeOf(String field) {
    Node.Entry entry = entries.get(field);
    return entry == null ? place : entry.value().place();
  }

  /** Reports that a field is missing. */
  public void missing(String field, String remedy) {
    findings.fault(place, way(field), "", "missing", remedy);
  }

  private interface Reader<T> {
    @Nullable T read(Place place, String way, String text);
  }

  private <T> @Nullable T read(String field, Reader<T> reader) {
    Node.Entry entry = entries.get(field);
    if (entry == null) {
      return null;
    }
    if (entry.value() instanceof Node.Scalar scalar) {
      if (scalar.text().isEmpty()) {
        findings.fault(
            entry.place(), way(field), "", "no value", "Fill it in, or delete the line.");
        return null;
      }
      return reader.read(scalar.place(), way(field), scalar.text());
    }
    findings.fault(
        entry.value().place(),
        way(field),
        "",
        (entry.value() instanceof Node.Listing ? "a list" : "fields") + " where one value belongs",
        "Write one value after the colon.");
    return null;
  }

  public @Nullable String words(String field) {
    return read(field, values::words);
  }

  public @Nullable Length length(String field, SafeSide side) {
    return read(field, (at, way, text) -> values.length(at, way, text, side));
  }

  public @Nullable Length positive(String field, SafeSide side) {
    return read(field, (at, way, text) -> values.positive(at, way, text, side));
  }

  public @Nullable Integer quantity(String field, int least) {
    return read(field, (at, way, text) -> values.quantity(at, way, text, least));
  }

  public @Nullable BigDecimal money(String field) {
    return read(field, values::money);
  }

  public @Nullable LocalDate day(String field) {
    return read(field, values::day);
  }

  public <T> @Nullable T word(String field, Map<String, T> words) {
    return read(field, (at, way, text) -> values.word(at, way, text, words));
  }

  public lapwright.measure.@Nullable WeightRate weight(String field) {
    return read(field, values::weight);
  }

  /** The items of a list; null when absent or wrong. */
  public @Nullable List<Node> list(String field) {
    Node.Entry entry = entries.get(field);
    if (entry == null) {
      return null;
    }
    if (entry.value() instanceof Node.Listing listing) {
      return listing.items();
    }
    findings.fault(
        entry.value().place(),
        way(field),
        entry.value() instanceof Node.Scalar scalar ? scalar.text() : "",
        "not a list",
        "Write each entry on its own line after a dash, or in [ ] with commas.");
    return null;
  }
}

package lapwright.files.source;

import java.util.List;
import java.util.Objects;

/** A value in a YAML or JSON file, and where it stands. */
public sealed interface Node {
  Place place();

  /** A text, number or word, as typed; empty when nothing was typed. */
  record Scalar(Place place, String text) implements Node {
    public Scalar {
      Objects.requireNonNull(place);
      Objects.requireNonNull(text);
    }
  }

  /** A list. */
  record Listing(Place place, List<Node> items) implements Node {
    public Listing {
      Objects.requireNonNull(place);
      items = List.copyOf(items);
    }
  }

  /** Fields with their values, in the order of the file; a field may stand twice. */
  record Mapping(Place place, List<Entry> entries) implements Node {
    public Mapping {
      Objects.requireNonNull(place);
      entries = List.copyOf(entries);
    }
  }

  /** A field with its value. */
  record Entry(Place place, String key, Node value) {
    public Entry {
      Objects.requireNonNull(place);
      Objects.requireNonNull(key);
      Objects.requireNonNull(value);
    }
  }
}

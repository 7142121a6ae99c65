package lapwright.files.source;

import java.util.Comparator;
import java.util.Objects;

/**
 * Where something stands.
 *
 * @param file path as people see it, with forward slashes
 * @param line from 1; 0 for the whole file
 * @param column from 1; 0 for the whole line
 */
public record Place(String file, int line, int column) implements Comparable<Place> {
  private static final Comparator<Place> ORDER =
      Comparator.comparing(Place::file)
          .thenComparingInt(Place::line)
          .thenComparingInt(Place::column);

  public Place {
    Objects.requireNonNull(file);
  }

  public static Place whole(String file) {
    return new Place(file, 0, 0);
  }

  /** Such as {@code jobs/pier.yaml, line 7, column 3}. */
  public String print() {
    if (line == 0) {
      return file;
    }
    return file + ", line " + line + (column == 0 ? "" : ", column " + column);
  }

  @Override
  public int compareTo(Place other) {
    return ORDER.compare(this, other);
  }
}

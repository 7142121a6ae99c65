package lapwright.files.source;

import java.util.Comparator;
import java.util.Objects;

/**
 * Something about the input that people should know, though it is no fault.
 *
 * @param field the field or column; empty when it is about no field
 * @param text one sentence
 */
public record Note(Kind kind, Place place, String field, String text) {
  /** By kind, then by place. */
  public static final Comparator<Note> BY_KIND =
      Comparator.comparing(Note::kind)
          .thenComparing(Note::place)
          .thenComparing(Note::field)
          .thenComparing(Note::text);

  public Note {
    Objects.requireNonNull(kind);
    Objects.requireNonNull(place);
    Objects.requireNonNull(field);
    Objects.requireNonNull(text);
  }

  /** What a note is about. */
  public enum Kind {
    /** Looks like a slip, and is taken as it stands. */
    WARNING,
    /** A value was left out, and this was taken for it. */
    ASSUMED,
    /** A length lies between two exact ones and was rounded to the safe side. */
    ROUNDED,
    /** A line or file that is not used here. */
    NOT_USED
  }

  /** Such as {@code jobs/pier.yaml, line 7, column 3, length: ...}. */
  public String print() {
    return place.print() + (field.isEmpty() ? "" : ", " + field) + ": " + text;
  }
}

package lapwright.files.jobs;

import java.util.List;
import java.util.stream.Stream;

/**
 * Names of the fields and columns that the files of jobs and kits may have; the editors' schemas
 * list the same.
 */
public final class JobFields {
  /** How a piece is to be cut, in a piece's fields and in a table's columns. */
  public static final List<String> CUTTING =
      List.of("ends", "long-points", "measured", "depth", "one-way", "may-be-short");

  public static final List<String> JOB =
      List.of(
          "job", "status", "due", "times", "pieces", "runs", "roofs", "walls", "blanks", "items",
          "kits", "change");

  /** Fields of a job that this version reads and does not plan. */
  public static final List<String> JOB_NOT_PLANNED = List.of("roofs", "walls", "blanks");

  public static final List<String> KIT =
      List.of("pieces", "runs", "roofs", "walls", "blanks", "items");
  public static final List<String> KIT_USE = List.of("kit", "times", "prefix");

  public static final List<String> PIECE = with(CUTTING, "qty", "length", "mark", "for");
  public static final List<String> RUN =
      List.of(
          "mark",
          "length",
          "qty",
          "for",
          "add-at-start",
          "add-at-end",
          "joint",
          "lap",
          "butt-gap",
          "joints-at",
          "bearings",
          "shortest-piece",
          "shortest-at-end",
          "longest-piece",
          "step",
          "closing",
          "full-sticks",
          "leave-long",
          "extra-joints",
          "most-joints",
          "stagger",
          "longest-unbroken",
          "gap");
  public static final List<String> BEARINGS = List.of("first", "spacing");
  public static final List<String> JOB_TABLE =
      with(CUTTING, "material", "length", "qty", "mark", "for", "girth", "job", "due");

  private JobFields() {}

  private static List<String> with(List<String> more, String... fields) {
    return Stream.concat(Stream.of(fields), more.stream()).toList();
  }
}

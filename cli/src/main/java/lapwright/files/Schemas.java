package lapwright.files;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/**
 * JSON Schemas, by which editors complete and check the files while they are written. They look at
 * the shape of a file only; {@link OrderFolder} reads it.
 */
public final class Schemas {
  /** The kinds of file that have a schema. */
  public static final List<String> KINDS =
      List.of("job", "kit", "materials", "suppliers", "shop", "order");

  private Schemas() {}

  /** The schema of one of {@link #KINDS}. */
  public static String text(String kind) {
    if (!KINDS.contains(kind)) {
      throw new IllegalArgumentException("no schema " + kind);
    }
    try (InputStream in =
        Objects.requireNonNull(Schemas.class.getResourceAsStream("schema/" + kind + ".json"))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

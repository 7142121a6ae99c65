package lapwright.print;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Compares text with an approved one that lies beside the tests. Run with LAPWRIGHT_APPROVE in the
 * environment to approve what is printed now, after reading it.
 */
final class Approved {
  private static final Path RESOURCES = Path.of("src/test/resources/lapwright/print");

  private Approved() {}

  static void assertApproved(String name, String text) {
    try {
      if (System.getenv("LAPWRIGHT_APPROVE") != null) {
        Files.createDirectories(RESOURCES);
        Files.writeString(RESOURCES.resolve(name), text);
        return;
      }
      try (InputStream approved = Approved.class.getResourceAsStream(name)) {
        assertEquals(
            approved == null ? "" : new String(approved.readAllBytes(), StandardCharsets.UTF_8),
            text,
            name);
      }
    } catch (IOException failure) {
      throw new UncheckedIOException(failure);
    }
  }
}

package lapwright.files.source;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * The text of one file. UTF-8 and, where a byte order mark says so, UTF-16 are read; any other
 * encoding is refused rather than guessed, because a wrong guess turns ½ into something else.
 *
 * @param name path as people see it
 * @param text without byte order mark, lines ended by {@code \n}
 * @param sha256 digest of the bytes, in hex
 */
public record FileText(String name, String text, String sha256) {
  private static final long MOST_BYTES = 200_000_000;

  public FileText {
    Objects.requireNonNull(name);
    Objects.requireNonNull(text);
    Objects.requireNonNull(sha256);
  }

  /** Reads a file; null when it cannot be read, which is a fault then. */
  public static @Nullable FileText read(Path path, String name, Findings findings) {
    byte[] bytes;
    try {
      if (!Files.isRegularFile(path)) {
        findings.fault(
            Place.whole(name), "", "", "not a file that can be read", "Put a plain file there.");
        return null;
      }
      if (Files.size(path) > MOST_BYTES) {
        findings.fault(
            Place.whole(name), "", "", "more than 200 MB", "Is this the right file? Split it.");
        return null;
      }
      bytes = Files.readAllBytes(path);
    } catch (IOException e) {
      findings.fault(
          Place.whole(name),
          "",
          "",
          "cannot be read (" + reason(e) + ")",
          "Close it in other programs and check that you may read it.");
      return null;
    }
    String text = decoded(bytes, name, findings);
    return text == null ? null : new FileText(name, text, sha256(bytes));
  }

  /** Why something failed, in short. */
  public static String reason(IOException e) {
    String message = e.getMessage();
    String kind = e.getClass().getSimpleName().replace("Exception", "");
    return message == null ? kind : kind + ": " + message;
  }

  public List<String> lines() {
    return List.of(text.split("\n", -1));
  }

  private static @Nullable String decoded(byte[] bytes, String name, Findings findings) {
    Charset charset = StandardCharsets.UTF_8;
    int skip = 0;
    if (startsWith(bytes, 0xEF, 0xBB, 0xBF)) {
      skip = 3;
    } else if (startsWith(bytes, 0xFE, 0xFF)) {
      charset = StandardCharsets.UTF_16BE;
      skip = 2;
    } else if (startsWith(bytes, 0xFF, 0xFE)) {
      charset = StandardCharsets.UTF_16LE;
      skip = 2;
    }
    CharBuffer out = CharBuffer.allocate(bytes.length + 1);
    ByteBuffer in = ByteBuffer.wrap(bytes, skip, bytes.length - skip);
    try {
      var result =
          charset
              .newDecoder()
              .onMalformedInput(CodingErrorAction.REPORT)
              .onUnmappableCharacter(CodingErrorAction.REPORT)
              .decode(in, out, true);
      if (result.isError()) {
        result.throwException();
      }
    } catch (CharacterCodingException e) {
      int line = 1;
      for (int i = 0; i < out.position(); i++) {
        line += out.get(i) == '\n' ? 1 : 0;
      }
      findings.fault(
          new Place(name, line, 0),
          "",
          "",
          "the text is not UTF-8; it looks like an older Windows encoding",
          "Save the file again as UTF-8 (in a spreadsheet: CSV UTF-8).");
      return null;
    }
    String text = out.flip().toString().replace("\r\n", "\n").replace('\r', '\n');
    int nul = text.indexOf('\0');
    if (nul >= 0) {
      int line = 1 + (int) text.substring(0, nul).chars().filter(c -> c == '\n').count();
      findings.fault(
          new Place(name, line, 0),
          "",
          "",
          "zero bytes in the text: it is no text file, or UTF-16 without its mark",
          "Save the file again as UTF-8 text.");
      return null;
    }
    return text;
  }

  private static boolean startsWith(byte[] bytes, int... start) {
    if (bytes.length < start.length) {
      return false;
    }
    for (int i = 0; i < start.length; i++) {
      if ((bytes[i] & 0xFF) != start[i]) {
        return false;
      }
    }
    return true;
  }

  private static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}

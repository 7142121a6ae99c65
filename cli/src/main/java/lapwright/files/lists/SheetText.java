package lapwright.files.lists;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import lapwright.files.source.FileText;
import lapwright.files.source.Findings;
import lapwright.files.source.Place;
import org.jspecify.annotations.Nullable;

/**
 * The lines of a spreadsheet's export. What is not UTF-8 (or UTF-16 with its mark) is taken for
 * Windows-1252, which is told, because people see here how each row was understood.
 */
record SheetText(List<String> lines, boolean windows) {
  private static final long MOST_BYTES = 20_000_000;
  private static final String WINDOWS = "windows-1252";

  SheetText {
    lines = List.copyOf(lines);
  }

  /** Null when the file cannot be read, which is a fault then. */
  static @Nullable SheetText read(Path path, String name, Findings findings) {
    byte[] bytes;
    try {
      if (!Files.isRegularFile(path)) {
        return fault(name, "not a file that can be read", "Name the exported CSV file.", findings);
      }
      if (Files.size(path) > MOST_BYTES) {
        return fault(name, "more than 20 MB", "Is this the right file?", findings);
      }
      bytes = Files.readAllBytes(path);
    } catch (IOException e) {
      return fault(
          name,
          "cannot be read (" + FileText.reason(e) + ")",
          "Close it in other programs and check that you may read it.",
          findings);
    }
    if (bytes.length > 3 && bytes[0] == 'P' && bytes[1] == 'K') {
      return fault(name, "a workbook", "Save the list from the spreadsheet as CSV.", findings);
    }
    boolean wide = bytes.length > 1 && (bytes[0] & 0xFE) == 0xFE && (bytes[1] & 0xFE) == 0xFE;
    String text = decoded(bytes, wide ? StandardCharsets.UTF_16 : StandardCharsets.UTF_8);
    boolean windows = text == null;
    if (text == null) {
      text = decoded(bytes, Charset.forName(WINDOWS));
    }
    if (text == null || text.indexOf('\0') >= 0) {
      return fault(
          name,
          "neither UTF-8, UTF-16 nor Windows-1252 text",
          "Save it from the spreadsheet as CSV UTF-8.",
          findings);
    }
    String plain = text.startsWith("\ufeff") ? text.substring(1) : text;
    plain = plain.replace("\r\n", "\n").replace('\r', '\n').replace('\u00a0', ' ');
    return new SheetText(List.of(plain.split("\n", -1)), windows);
  }

  private static @Nullable SheetText fault(
      String name, String wrong, String remedy, Findings findings) {
    findings.fault(Place.whole(name), "", "", wrong, remedy);
    return null;
  }

  private static @Nullable String decoded(byte[] bytes, Charset charset) {
    try {
      return charset
          .newDecoder()
          .onMalformedInput(CodingErrorAction.REPORT)
          .onUnmappableCharacter(CodingErrorAction.REPORT)
          .decode(ByteBuffer.wrap(bytes))
          .toString();
    } catch (CharacterCodingException e) {
      return null;
    }
  }
}

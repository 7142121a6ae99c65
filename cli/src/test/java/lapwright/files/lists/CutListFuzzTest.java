package lapwright.files.lists;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import lapwright.files.JobTable;
import lapwright.files.source.Fault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Spreadsheets' lists changed at random, from a fixed seed: whatever is refused is refused with a
 * place and what to do; whatever is understood is written as a table that reads back the same.
 */
final class CutListFuzzTest {
  private static final int LISTS = 1500;

  private static final List<String> SOUND =
      List.of(
          "Material,Length,Qty,Mark,For\ntube,9'-6\",4,P1,post\nangle,10 1/2\",12,A1,clip\n",
          "Cut list for the barn;;;\nQTY;Length (ft);Mark;Material\n4 ea;9.5;P1;tube\n"
              + "2;12.0416667;B1;tube\nTotal;;;\n",
          "\ufeffmark\tqty\tlength mm\tmaterial\nP1\t4\t2895.6\ttube\nB1\t2\t3200\tangle\n");

  private static final List<String> SCRAPS =
      List.of(
          "\"",
          "'",
          ",",
          ";",
          "\t",
          "\n",
          "\r\n",
          "\u0000",
          "\u00bd",
          "\u00a0",
          "=",
          "-",
          "@",
          "10-6",
          "10-Jun",
          "1,200",
          "1e9",
          "9'-14\"",
          "9' 6",
          "total",
          "ft",
          "mm",
          "in",
          "99999999999999",
          "0",
          "\u2033");

  @TempDir Path dir;

  @Test
  void everyListIsUnderstoodOrRefusedByRow() throws IOException {
    int understood = 0;
    int refused = 0;
    for (int seed = 0; seed < LISTS; seed++) {
      byte[] bytes = changed(new Random(seed));
      Path file = dir.resolve("list.csv");
      Files.write(file, bytes);
      try {
        CutList.Result result =
            CutListReader.read(file, new CutList.Hints("", null, JobTable.KEPT));
        if (result instanceof CutList.Result.Understood sound) {
          understood++;
          readsBack(sound.list());
        } else {
          refused++;
          for (Fault fault : ((CutList.Result.Faulty) result).faults()) {
            assertFalse(fault.wrong().isBlank() || fault.remedy().isBlank(), fault.toString());
          }
        }
      } catch (RuntimeException | StackOverflowError e) {
        throw new AssertionError("list of seed " + seed, e);
      }
    }
    assertTrue(understood > LISTS / 10, understood + " understood");
    assertTrue(refused > LISTS / 10, refused + " refused");
  }

  private void readsBack(CutList list) throws IOException {
    if (list.pieces().isEmpty()) {
      return;
    }
    Path table = dir.resolve("table.csv");
    String text = JobTable.text(list);
    Files.writeString(table, text);
    CutList.Result again = CutListReader.read(table, new CutList.Hints("", null, JobTable.KEPT));
    if (again instanceof CutList.Result.Understood same) {
      assertEquals(text, JobTable.text(same.list()));
    }
  }

  private static byte[] changed(Random random) {
    StringBuilder text = new StringBuilder(SOUND.get(random.nextInt(SOUND.size())));
    for (int change = random.nextInt(4); change > 0; change--) {
      int at = random.nextInt(text.length());
      switch (random.nextInt(4)) {
        case 0 -> text.insert(at, SCRAPS.get(random.nextInt(SCRAPS.size())));
        case 1 -> text.deleteCharAt(at);
        case 2 -> text.setCharAt(at, (char) ('0' + random.nextInt(10)));
        default -> text.delete(at, Math.min(text.length(), at + random.nextInt(12)));
      }
      if (text.length() == 0) {
        text.append(',');
      }
    }
    byte[] bytes = text.toString().getBytes(StandardCharsets.UTF_8);
    if (random.nextInt(5) == 0) {
      bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
    }
    return bytes;
  }
}

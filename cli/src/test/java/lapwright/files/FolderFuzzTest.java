package lapwright.files;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.check.PlanCheck;
import lapwright.check.Verdict;
import lapwright.effort.Effort;
import lapwright.files.jobs.JobChoice;
import lapwright.files.papers.StockAfter;
import lapwright.files.saved.PlanFile;
import lapwright.files.saved.PlanReading;
import lapwright.files.source.Fault;
import lapwright.plan.OrderPlan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Changes a sound folder at random, from a fixed seed: bytes, lines, numbers, fields, whole files.
 * Whatever is refused is refused with places and advice; whatever is accepted can be planned,
 * passes the check, and is the same when saved and read back.
 */
final class FolderFuzzTest {
  private static final int FOLDERS = 600;
  private static final long PLANNING_NANOS = 250_000_000L;

  private static final List<String> VALUES =
      List.of(
          "0",
          "-1",
          "1",
          "007",
          "2E1",
          "1e9",
          "2.5",
          "99",
          "1000000",
          "1000001",
          "99999999999999",
          "10'",
          "10' 6",
          "0.063\"",
          "9'-14\"",
          "½",
          "3200 mm",
          "0.0001 mm",
          "1001 m",
          "",
          "~",
          "No",
          "firm",
          "bid",
          "mill",
          "job",
          "stick",
          "flat",
          "2026-02-30",
          "2026-12-05",
          "lb",
          "cwt",
          "ft");
  private static final List<String> SCRAPS =
      List.of(
          "\t",
          "\"",
          "'",
          ":",
          ": ",
          " #5",
          "# ",
          "&a ",
          "*a",
          "!!str ",
          "---\n",
          "\ufeff",
          "\u0000",
          "\r\n",
          ",",
          ";",
          "{",
          "}",
          "[",
          "]",
          "- ",
          "@",
          "\n",
          "|\n",
          "<<: *a\n",
          "é",
          "½",
          "\u200b");

  @TempDir Path dir;

  @Test
  void whateverIsAcceptedCanBePlannedAndNothingIsAnException() throws IOException {
    int refused = 0;
    int planned = 0;
    for (int seed = 0; seed < FOLDERS; seed++) {
      Path folder = dir.resolve("f" + seed);
      changed(new Random(seed), folder);
      try {
        FolderReading reading = OrderFolder.read(folder, JobChoice.firm());
        if (reading instanceof FolderReading.Faulty faulty) {
          refused++;
          for (Fault fault : faulty.faults()) {
            assertTrue(!fault.wrong().isBlank() && !fault.remedy().isBlank(), fault.toString());
          }
          assertTrue(!Fault.print(faulty.faults()).isBlank());
        } else if (plans(((FolderReading.Sound) reading).input())) {
          planned++;
        }
      } catch (RuntimeException | StackOverflowError e) {
        throw new AssertionError("folder of seed " + seed, e);
      }
      delete(folder);
    }
    assertTrue(refused > FOLDERS / 5, refused + " refused");
    assertTrue(planned > FOLDERS / 5, planned + " planned");
  }

  private static boolean plans(OrderInput input) {
    Planner planner = new Planner(new MarkerNames(input.offcutNames()), 1);
    Effort effort = Effort.limited(System::nanoTime, PLANNING_NANOS, () -> false, progress -> {});
    PlanResult result =
        planner.plan(
            input.order().shop(), input.materialOrders(), input.itemOrders(), Map.of(), effort);
    if (!(result instanceof PlanResult.Planned done)) {
      return false;
    }
    OrderPlan plan = done.plan().plan();
    assertInstanceOf(Verdict.Sound.class, PlanCheck.check(plan));
    String text = PlanFile.text(plan, input.digests(), null);
    PlanReading back = PlanFile.read(text);
    assertEquals(plan, assertInstanceOf(PlanReading.Saved.class, back).plan());
    StockAfter after = new StockAfter(input.order(), input.otherStock(), List.of(plan));
    after.onHand(lapwright.measure.LengthStyle.FEET_INCHES);
    after.rack(lapwright.measure.LengthStyle.MILLIMETRES);
    return true;
  }

  private static void changed(Random random, Path folder) throws IOException {
    SampleFolder sample =
        random.nextInt(4) == 0 ? SampleFolder.withKitsAndRuns() : SampleFolder.withKits();
    sample.put("jobs/boxes.yaml", "job: boxes\nitems: { screw-2-grey: 120, closure: 9 }\n");
    sample.put("on-hand.csv", "material,length,qty,place\nangle-2x2,20',3,B2\nclosure,,4,\n");
    sample.replace("kits/bus-shelter.yaml", "pieces:", "items: { screw-2-grey: 40 }\npieces:");
    List<String> names = new ArrayList<>(sample.files().keySet());
    sample.write(folder);
    for (int change = random.nextInt(8) / 4; change >= 0; change--) {
      String name = names.get(random.nextInt(names.size()));
      Path file = folder.resolve(name);
      if (!Files.exists(file)) {
        continue;
      }
      byte[] bytes = Files.readAllBytes(file);
      String text = new String(bytes, StandardCharsets.UTF_8);
      switch (random.nextInt(15)) {
        case 0 -> {
          if (bytes.length > 0) {
            bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
            Files.write(file, bytes);
          }
        }
        case 1 -> Files.writeString(file, text.substring(0, random.nextInt(text.length() + 1)));
        case 2, 3, 4 -> Files.writeString(file, withAnotherValue(text, random));
        case 5 -> Files.writeString(file, withLinesMoved(text, random));
        case 6, 7 -> {
          int at = random.nextInt(text.length() + 1);
          String scrap = SCRAPS.get(random.nextInt(SCRAPS.size()));
          Files.writeString(file, text.substring(0, at) + scrap + text.substring(at));
        }
        case 8 -> {
          if (random.nextInt(4) == 0) {
            Files.delete(file);
          } else {
            Files.writeString(file, text.replace("\n", "\r\n"), StandardCharsets.UTF_16);
          }
        }
        case 9, 10, 11, 12, 13 -> Files.writeString(file, withAnotherDigit(text, random));
        default ->
            Files.writeString(
                file,
                text.replaceFirst(
                    List.of(
                            "qty",
                            "length",
                            "material",
                            "saw",
                            "price",
                            "job",
                            "kerf",
                            "stock",
                            "kit",
                            "times",
                            "prefix",
                            "change",
                            "joint",
                            "lap",
                            "bearings",
                            "joints-at")
                        .get(random.nextInt(16)),
                    List.of(
                            "qty",
                            "lenght",
                            "mark",
                            "girth",
                            "runs",
                            "ends",
                            "width",
                            "due",
                            "kits",
                            "change",
                            "times",
                            "prefix",
                            "joint",
                            "butt-gap",
                            "stagger",
                            "full-sticks")
                        .get(random.nextInt(16))));
      }
    }
  }

  private static String withAnotherDigit(String text, Random random) {
    StringBuilder other = new StringBuilder(text);
    List<Integer> digits = new ArrayList<>();
    for (int i = 0; i < text.length(); i++) {
      if (Character.isDigit(text.charAt(i))) {
        digits.add(i);
      }
    }
    if (!digits.isEmpty()) {
      int at = digits.get(random.nextInt(digits.size()));
      other.setCharAt(at, (char) ('0' + random.nextInt(10)));
    }
    return other.toString();
  }

  /** One word or number replaced by another. */
  private static String withAnotherValue(String text, Random random) {
    List<int[]> words = new ArrayList<>();
    var matcher = java.util.regex.Pattern.compile("[^\\s,:{}\\[\\]]+").matcher(text);
    while (matcher.find()) {
      words.add(new int[] {matcher.start(), matcher.end()});
    }
    if (words.isEmpty()) {
      return text;
    }
    int[] word = words.get(random.nextInt(words.size()));
    return text.substring(0, word[0])
        + VALUES.get(random.nextInt(VALUES.size()))
        + text.substring(word[1]);
  }

  /** A line left out, doubled, moved or indented. */
  private static String withLinesMoved(String text, Random random) {
    List<String> lines = new ArrayList<>(List.of(text.split("\n", -1)));
    int at = random.nextInt(lines.size());
    switch (random.nextInt(4)) {
      case 0 -> lines.remove(at);
      case 1 -> lines.add(at, lines.get(random.nextInt(lines.size())));
      case 2 -> lines.add(random.nextInt(lines.size()), lines.remove(at));
      default -> lines.set(at, "  " + lines.get(at));
    }
    return String.join("\n", lines);
  }

  private static void delete(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path path : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }
}

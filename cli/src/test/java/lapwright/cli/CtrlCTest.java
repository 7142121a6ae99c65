package lapwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Ctrl-C in a process of its own: the best plan so far, with its bound, and exit status 0. */
@EnabledOnOs(OS.LINUX) // kill and env, which restores the signal that a background job ignores
class CtrlCTest {
  /** Planning takes far longer than it takes to interrupt it. */
  private static final int JOBS = 250;

  private static final int MATERIALS = 40;

  @TempDir Path temp;

  @Test
  @Timeout(value = 10, unit = TimeUnit.MINUTES)
  void anInterruptedOrderIsStillAnOrder() throws IOException, InterruptedException {
    Path folder = largeWeek();
    Path out = temp.resolve("out");
    Process process =
        new ProcessBuilder(
                List.of(
                    "env",
                    "--default-signal=INT",
                    Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                    "-Dlapwright.terminals=2",
                    "-cp",
                    System.getProperty("java.class.path"),
                    Main.class.getName(),
                    "order",
                    folder.toString(),
                    "--time",
                    "3600"))
            .redirectOutput(out.toFile())
            .start();
    process.getOutputStream().close();

    StringBuilder err = new StringBuilder();
    try (BufferedReader messages = process.errorReader(StandardCharsets.UTF_8)) {
      boolean interrupted = false;
      int read = messages.read();
      while (read >= 0) {
        err.append((char) read);
        if (!interrupted && err.indexOf("Planning, ") >= 0) {
          interrupted = true;
          new ProcessBuilder("kill", "-INT", Long.toString(process.pid())).start().waitFor();
        }
        read = messages.read();
      }
    }

    assertEquals(ExitStatus.DONE, process.waitFor(), err::toString);
    assertTrue(err.indexOf("Stopping, ") >= 0, err::toString);
    String text = Files.readString(out, StandardCharsets.UTF_8);
    assertTrue(text.startsWith("Buy "), text);
    assertTrue(text.contains("no plan can do with less than"), text);
  }

  private Path largeWeek() throws IOException {
    TinyShop shop = TinyShop.in(temp.resolve("large"));
    StringBuilder materials = new StringBuilder("materials:\n");
    for (int m = 0; m < MATERIALS; m++) {
      materials.append(
          """
            m%d:
              saw: saw
              stock:
                - { length: 20', price: 41.00, per: each, supplier: north }
                - { length: 24', price: 49.20, per: each, supplier: north }
          """
              .formatted(m));
    }
    shop.put("materials.yaml", materials.toString());
    Random random = new Random(1);
    StringBuilder rows = new StringBuilder("job,material,length,qty\n");
    for (int row = 0; row < 40 * JOBS; row++) {
      int sixteenths = 192 + random.nextInt(3457);
      rows.append(
          "job-%d,m%d,%d %d/16 in,%d%n"
              .formatted(
                  row / 40,
                  random.nextInt(MATERIALS),
                  sixteenths / 16,
                  sixteenths % 16,
                  1 + random.nextInt(10)));
    }
    for (String job : List.of("pier", "shed", "barn")) {
      Files.delete(shop.folder().resolve("jobs/" + job + ".yaml"));
    }
    shop.put("jobs/all.csv", rows.toString());
    return shop.folder();
  }
}

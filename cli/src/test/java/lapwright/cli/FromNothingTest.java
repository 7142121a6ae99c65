package lapwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Somebody new, with the folder that {@code start} writes and the README's two lines. */
final class FromNothingTest {
  @TempDir private Path elsewhere = Path.of("");

  private static CommandRun run(Object... words) {
    CommandRun run = CommandRun.of(words);
    assertEquals(ExitStatus.DONE, run.status(), () -> run.err() + run.out());
    return run;
  }

  @Test
  void aFolderForEachOrder() throws IOException {
    Path shop = elsewhere.resolve("my-shop");
    run("start", shop);
    Path order = shop.resolve("orders/2030-05-06");
    Files.createDirectories(order);
    Files.writeString(order.resolve("order.yaml"), "shop: ../..\njobs: ../../jobs\n");
    run("order", order, "--save");
    Files.writeString(
        shop.resolve("jobs/lean-to.yaml"),
        "status: bid\npieces:\n  tube-2x3-14ga:\n    - 5 @ 9'-2\"  P1  post\n");
    assertTrue(
        run("waste", order, "--job", "lean-to", "--with-week")
            .firstLine()
            .startsWith("lean-to alone, bought new, costs $"));

    Path list = elsewhere.resolve("list.csv");
    Files.writeString(list, "Mark,Qty,Length,Profile\nP1,4 ea,8'-3,tube-2x3-14ga\n");
    run("read", list, "--as", "boat-roof", "--to", order);
    assertTrue(Files.exists(shop.resolve("jobs/boat-roof.csv")));
    assertTrue(run("order", order, "--more", "--save").firstLine().startsWith("Buy "));

    // Offcuts of the first order have names that a plan of one more must not give again.
    assertTrue(run("explain", order, "P1").out().contains("One more"));
    run("cut", order);
    run("check", order);
    run("prices", order);
    run("waste", order, "--dimensions");
  }
}

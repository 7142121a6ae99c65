package lapwright.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * What the launcher runs once, so that the virtual machine can archive the classes that the
 * commands load: a small folder is written, planned, cut and checked, and nobody looks at it.
 */
public final class FirstStart {
  private FirstStart() {}

  public static void main(String[] args) throws IOException {
    Path temporary = Files.createTempDirectory("lapwright");
    try {
      String folder = temporary.resolve("shop").toString();
      run("start", folder);
      run("order", folder, "--save", "--out", temporary.resolve("papers").toString());
      run("order", folder, "--json");
      run("cut", folder, "--all");
      run("waste", folder);
      run("check", folder);
      run("order", temporary.resolve("nowhere").toString());
      run("order", "--help");
    } finally {
      List<Path> all;
      try (Stream<Path> files = Files.walk(temporary)) {
        all = files.sorted(Comparator.reverseOrder()).toList();
      }
      for (Path file : all) {
        Files.delete(file);
      }
    }
  }

  private static void run(String... line) {
    Lapwright.run(
        line,
        Surroundings.ofProcess(OutputStream.nullOutputStream(), OutputStream.nullOutputStream()));
  }
}

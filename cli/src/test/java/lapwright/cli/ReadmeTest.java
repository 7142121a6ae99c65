package lapwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What the README shows is what the program prints. After a change that is meant, {@code mvn verify
 * -Dlapwright.readme=write} writes the README's examples anew.
 */
class ReadmeTest {
  private static final Path README = Path.of("..", "README.md");
  private static final Pattern BLOCK =
      Pattern.compile(
          "```\n((?:\\$ cp [^\n]*\n)*)\\$ cli/lapwright ([^\n|]*)(\\|[^\n]*)?\n(.*?)```\n",
          Pattern.DOTALL);

  /** What the README tells somebody to copy the sample week to. */
  private static final String WEEK = "my-week";

  private static final Pattern HEAD = Pattern.compile("head -n (\\d+)");
  private static final Pattern RANGE = Pattern.compile("sed -n '/(.*?)/,/(.*?)/p'");

  @Test
  void examplesAreTrue(@TempDir Path elsewhere) throws IOException {
    String readme = Files.readString(README);
    StringBuilder actual = new StringBuilder();
    Matcher block = BLOCK.matcher(readme);
    int examples = 0;
    while (block.find()) {
      for (String copy : block.group(1).lines().toList()) {
        String[] words = there(copy, elsewhere).replaceFirst("^\\$ cp (-r )?", "").split(" +");
        copy(Path.of(words[0]), Path.of(words[1]));
      }
      String command = block.group(2).strip();
      String filter = block.group(3) == null ? "" : block.group(3).strip();
      CommandRun run = CommandRun.of((Object[]) there(command, elsewhere).split(" +"));
      assertEquals(ExitStatus.DONE, run.status(), run::err);
      String shown = String.join("\n", filtered(run.out().lines().toList(), filter)) + "\n";
      block.appendReplacement(
          actual,
          Matcher.quoteReplacement(
              "```\n"
                  + block.group(1)
                  + "$ cli/lapwright "
                  + (command + " " + filter).strip()
                  + "\n"
                  + shown
                  + "```\n"));
      examples++;
    }
    block.appendTail(actual);
    assertTrue(examples >= 3, "only " + examples + " examples");
    if ("write".equals(System.getProperty("lapwright.readme"))) {
      Files.writeString(README, actual.toString());
    } else {
      assertEquals(readme, actual.toString(), "-Dlapwright.readme=write writes it anew");
    }
  }

  private static String there(String line, Path elsewhere) {
    return line.replace("sample-orders", "../sample-orders")
        .replace(WEEK, elsewhere.resolve(WEEK).toString());
  }

  /** As cp does: into a folder that is there, else under that name. */
  private static void copy(Path from, Path to) throws IOException {
    Path target =
        Files.isDirectory(to) ? to.resolve(Objects.requireNonNull(from.getFileName())) : to;
    try (Stream<Path> all = Files.walk(from)) {
      for (Path each : all.toList()) {
        Path copy = target.resolve(from.relativize(each).toString());
        if (Files.isDirectory(each)) {
          Files.createDirectories(copy);
        } else {
          Files.copy(each, copy, StandardCopyOption.REPLACE_EXISTING);
        }
      }
    }
  }

  /** What the filters of the README's command lines let through. */
  private static List<String> filtered(List<String> lines, String filter) {
    Matcher head = HEAD.matcher(filter);
    if (head.find()) {
      return lines.subList(0, Math.min(lines.size(), Integer.parseInt(head.group(1))));
    }
    Matcher range = RANGE.matcher(filter);
    if (!range.find()) {
      return lines;
    }
    List<String> shown = new ArrayList<>();
    boolean inside = false;
    for (String line : lines) {
      inside |= line.contains(range.group(1));
      if (inside) {
        shown.add(line);
      }
      inside &= !line.contains(range.group(2));
    }
    return shown;
  }
}

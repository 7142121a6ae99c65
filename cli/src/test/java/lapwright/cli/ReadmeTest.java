package lapwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * What the README shows is what the program prints. After a change that is meant, {@code mvn verify
 * -Dlapwright.readme=write} writes the README's examples anew.
 */
class ReadmeTest {
  private static final Path README = Path.of("..", "README.md");
  private static final Pattern BLOCK =
      Pattern.compile("```\n\\$ cli/lapwright ([^\n|]*)(\\|[^\n]*)?\n(.*?)```\n", Pattern.DOTALL);
  private static final Pattern HEAD = Pattern.compile("head -n (\\d+)");
  private static final Pattern RANGE = Pattern.compile("sed -n '/(.*?)/,/(.*?)/p'");

  @Test
  void examplesAreTrue() throws IOException {
    String readme = Files.readString(README);
    StringBuilder actual = new StringBuilder();
    Matcher block = BLOCK.matcher(readme);
    int examples = 0;
    while (block.find()) {
      String command = block.group(1).strip();
      String filter = block.group(2) == null ? "" : block.group(2).strip();
      CommandRun run =
          CommandRun.of(
              (Object[]) command.replace("sample-orders", "../sample-orders").split(" +"));
      assertEquals(ExitStatus.DONE, run.status(), run::err);
      String shown = String.join("\n", filtered(run.out().lines().toList(), filter)) + "\n";
      block.appendReplacement(
          actual,
          Matcher.quoteReplacement(
              "```\n$ cli/lapwright " + (command + " " + filter).strip() + "\n" + shown + "```\n"));
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

package lapwright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import lapwright.files.StartFolder;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** A folder to begin with. */
@Command(
    name = "start",
    description = "Writes a small folder with comments, to begin with: it can be planned as it is.",
    footerHeading = "%nExample:%n",
    footer = "  lapwright start my-shop")
final class StartCommand implements Callable<Integer> {
  private final Desk desk;

  @Parameters(
      paramLabel = "DIR",
      description = "The folder to write: a new one, or one that is empty.")
  private Path folder = Path.of("");

  StartCommand(Desk desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() throws IOException {
    StringBuilder text = new StringBuilder("Written to " + folder + ":\n");
    StartFolder.write(folder).forEach(file -> text.append("  ").append(file).append('\n'));
    text.append("Read them in this order; then: lapwright order ").append(folder).append('\n');
    text.append(
        "The README tells, under 'Your own shop', how each week gets a folder of its own.\n");
    desk.print(text.toString());
    return ExitStatus.DONE;
  }
}

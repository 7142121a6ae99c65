package lapwright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import lapwright.files.JobChoice;
import lapwright.files.OrderInput;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Is the input sound, and is the saved plan still good. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    description = {
      "Reads the folder and names everything that is wrong in it. Where 'order --save' has left"
          + " plan.json, checks that plan as well: that it keeps every rule, that its proof holds,"
          + " and that it still fits the jobs and the stock.",
    },
    footerHeading = "%nExample:%n",
    footer = "  lapwright check my-shop%n")
final class CheckCommand implements Callable<Integer> {
  private final Desk desk;

  @Parameters(paramLabel = "FOLDER", description = "The folder of the order.")
  private Path folder = Path.of("");

  CheckCommand(Desk desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() throws IOException {
    @Nullable OrderInput input = desk.read(folder, JobChoice.firm());
    if (input == null) {
      return ExitStatus.WRONG_INPUT;
    }
    desk.print(InputSummary.of(input));
    return ExitStatus.DONE;
  }
}

package lapwright.cli;

import java.util.concurrent.Callable;
import lapwright.files.Schemas;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** What a kind of file may hold, for editors. */
@Command(
    name = "schema",
    description = {
      "Prints the JSON Schema of a kind of file, by which an editor completes and checks it: job,"
          + " kit, materials, suppliers, shop or order."
    },
    footerHeading = "%nExample:%n",
    footer = "  lapwright schema job > job.schema.json")
final class SchemaCommand implements Callable<Integer> {
  private final Desk desk;

  @Parameters(paramLabel = "KIND", description = "job, kit, materials, suppliers, shop or order.")
  private String kind = "";

  @Spec private @Nullable CommandSpec spec;

  SchemaCommand(Desk desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() {
    if (!Schemas.KINDS.contains(kind) && spec != null) {
      throw new ParameterException(
          spec.commandLine(),
          "'" + kind + "' is no kind of file; there are " + String.join(", ", Schemas.KINDS) + ".");
    }
    desk.print(Schemas.text(kind));
    return ExitStatus.DONE;
  }
}

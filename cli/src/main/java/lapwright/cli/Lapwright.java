package lapwright.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;
import picocli.CommandLine.UnmatchedArgumentException;

/** The program: its commands by name, and what happens to whatever goes wrong in one. */
@Command(
    name = "lapwright",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    synopsisSubcommandLabel = "COMMAND",
    description = {
      "Plans what to buy and how to cut: one order for all jobs, least cost, every offcut accounted"
          + " for.",
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  lapwright start my-shop           write a small folder to begin with",
      "  lapwright order my-shop           what to buy for all its firm jobs",
      "  lapwright cut my-shop             how to cut it",
      "",
      "'lapwright COMMAND --help' tells about a command."
    })
final class Lapwright implements Runnable {
  @Option(
      names = "--debug",
      scope = ScopeType.INHERIT,
      description = "When something goes wrong inside the program, show where.")
  private boolean debug;

  @Spec private @Nullable CommandSpec spec;

  private final Surroundings surroundings;

  private Lapwright(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  /** Runs one command line and returns its {@link ExitStatus}. */
  static int run(String[] args, Surroundings surroundings) {
    int status = ExitStatus.PROGRAM_FAULT;
    try {
      status = new Lapwright(surroundings).execute(args);
    } finally {
      surroundings.out().flush();
      surroundings.err().flush();
      surroundings.interruption().ended(status);
    }
    return status;
  }

  private int execute(String[] args) {
    CommandLine line = new CommandLine(this);
    Desk desk = new Desk(surroundings, () -> debug);
    for (Object command :
        List.of(
            new OrderCommand(desk),
            new CutCommand(desk),
            new WasteCommand(desk),
            new ExplainCommand(desk),
            new PricesCommand(desk),
            new LayCommand(desk),
            new CheckCommand(desk),
            new SchemaCommand(desk),
            new StartCommand(desk),
            new ReadCommand(desk))) {
      line.addSubcommand(new CommandLine(command).addMixin("help", new HelpOption()));
    }
    line.setOut(surroundings.out())
        .setErr(surroundings.err())
        .setColorScheme(
            CommandLine.Help.defaultColorScheme(surroundings.colour() ? Ansi.ON : Ansi.OFF))
        .setUsageHelpLongOptionsMaxWidth(24)
        .setParameterExceptionHandler(this::explainUsage)
        .setExecutionExceptionHandler((fault, at, parsed) -> explain(fault));
    try {
      int status = line.execute(args);
      if (surroundings.out().checkError() && status == ExitStatus.DONE) {
        surroundings.err().println("lapwright: the output could not be written to its end.");
        return ExitStatus.WRONG_INPUT;
      }
      return status;
    } catch (StackOverflowError | OutOfMemoryError fault) {
      return explain(fault);
    }
  }

  @Override
  public void run() {
    throw new ParameterException(Objects.requireNonNull(spec).commandLine(), "which command?");
  }

  private int explainUsage(ParameterException wrong, String[] args) {
    CommandLine line = wrong.getCommandLine();
    if (wrong instanceof UnmatchedArgumentException unmatched) {
      String words = String.join(" ", unmatched.getUnmatched());
      surroundings.err().println("lapwright: not understood: " + words);
      UnmatchedArgumentException.printSuggestions(wrong, surroundings.err());
    } else {
      surroundings.err().println("lapwright: " + wrong.getMessage());
    }
    surroundings
        .err()
        .println("'" + line.getCommandSpec().qualifiedName() + " --help' tells how it is used.");
    return ExitStatus.WRONG_USAGE;
  }

  private int explain(Throwable fault) {
    if (debug) {
      fault.printStackTrace(surroundings.err());
    }
    if (fault instanceof IOException || fault instanceof UncheckedIOException) {
      surroundings.err().println("lapwright: " + FileTrouble.describe(fault));
      return ExitStatus.WRONG_INPUT;
    }
    surroundings.err().println("lapwright: a fault in the program, nothing was written: " + fault);
    if (!debug) {
      surroundings.err().println("The same command with --debug shows where; please report that.");
    }
    return ExitStatus.PROGRAM_FAULT;
  }
}

package lapwright.cli;

import picocli.CommandLine.Option;

/** Every command tells about itself. */
final class HelpOption {
  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Tell about this command.")
  boolean asked;
}

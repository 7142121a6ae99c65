package lapwright.cli;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** What the commands that plan have in common. */
final class PlanningOptions {
  @Option(
      names = "--job",
      paramLabel = "NAME",
      description = "Only this job; may be given several times.")
  private List<String> jobs = new ArrayList<>();

  @Option(
      names = "--time",
      paramLabel = "SECONDS",
      defaultValue = "60",
      converter = Seconds.class,
      description =
          "Stop planning after this time and take the best plan so far (default: ${DEFAULT-VALUE})."
              + " Ctrl-C does the same.")
  private long nanos;

  @Option(
      names = "--require-proof",
      description = "Exit status 5 unless it is proved that no plan costs less.")
  private boolean proofRequired;

  List<String> jobs() {
    return jobs;
  }

  /** The time limit. */
  long nanos() {
    return nanos;
  }

  boolean isProofRequired() {
    return proofRequired;
  }

  /** A number of seconds, decimals allowed, as nanoseconds. */
  static final class Seconds implements ITypeConverter<Long> {
    private static final BigDecimal MOST = BigDecimal.valueOf(7 * 24 * 3600);

    @Override
    public Long convert(String text) {
      BigDecimal seconds;
      try {
        seconds = new BigDecimal(text.strip());
      } catch (NumberFormatException e) {
        throw new TypeConversionException("'" + text + "' is not a number of seconds, such as 30");
      }
      if (seconds.signum() <= 0 || seconds.compareTo(MOST) > 0) {
        throw new TypeConversionException("'" + text + "' is not between 0 and a week of seconds");
      }
      return seconds.movePointRight(9).setScale(0, RoundingMode.CEILING).longValueExact();
    }
  }
}

package lapwright.bench;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import lapwright.bench.instance.Instance;
import lapwright.bench.instance.InstanceClasses;
import lapwright.bench.instance.InstanceReader;
import lapwright.bench.instance.InstanceWriter;
import lapwright.bench.instance.RunShop;
import lapwright.bench.instance.Week;
import lapwright.bench.instance.WeekFolder;
import lapwright.bench.method.Method;
import lapwright.bench.method.Methods;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The command line of the measurements. */
@Command(
    name = "bench",
    description = {
      "Measures methods on cutting stock instances and checks every answer.",
      "Reads bin packing, cutting stock and several-stock-length files, or generates instances."
    },
    mixinStandardHelpOptions = true,
    version = "bench of Lapwright 0.1.0",
    sortOptions = false,
    exitCodeListHeading = "Exit status:%n",
    exitCodeList = {
      "0:measured, every answer right",
      "1:an answer is wrong",
      "2:wrong usage",
      "3:wrong input"
    })
final class BenchCommand implements Callable<Integer> {
  static final int RIGHT = 0;
  static final int WRONG_ANSWER = 1;
  static final int WRONG_USAGE = 2;
  static final int WRONG_INPUT = 3;

  private final PrintWriter out;
  private final PrintWriter err;

  @Spec private @Nullable CommandSpec spec;

  @Parameters(paramLabel = "FILES|DIRS", description = "instances; a folder is a class")
  private List<Path> paths = new ArrayList<>();

  @Option(
      names = "--generate",
      arity = "1..*",
      paramLabel = "CLASS",
      description = "generate instances: a class, or a class with parameters as uniform:n=120")
  private List<String> classes = new ArrayList<>();

  @Option(names = "--count", defaultValue = "20", description = "instances a class (20)")
  private int count;

  @Option(
      names = "--seed",
      defaultValue = "1",
      description = "seed of the first; the next one takes the next seed (1)")
  private long seed;

  @Option(names = "--out", description = "write the instances into this folder, solve nothing")
  private @Nullable Path outFolder;

  @Option(
      names = "--weeks",
      split = ",",
      paramLabel = "JOBS",
      description = "plan generated weeks of so many jobs; with --out: as order folders")
  private List<Integer> weeks = new ArrayList<>();

  @Option(
      names = "--stocked",
      description =
          "with --weeks and --out: a second supplier, sticks on hand and a rack in the folders too")
  private boolean stocked;

  @Option(
      names = "--runs",
      split = ",",
      paramLabel = "LINES",
      description = "plan generated shops of so many lines that are joined, of every kind")
  private List<Integer> runLines = new ArrayList<>();

  @Option(
      names = "--runs-kind",
      paramLabel = "TEXT",
      defaultValue = "",
      description = "of them only kinds whose name begins so: bearings, \"anywhere + 1, 20 ft\"")
  private String runKind = "";

  @Option(names = "--not-compared", description = "with --runs: do not plan full sticks too")
  private boolean notCompared;

  @Option(
      names = "--growth",
      arity = "0..*",
      paramLabel = "CURVE",
      fallbackValue = "all",
      description = "growth curves: pieces, types, lengths, capacity, grid; all of them by default")
  private List<String> curves = new ArrayList<>();

  @Option(
      names = "--method",
      split = ",",
      defaultValue = "lapwright",
      description = "methods, in the same run; ratios refer to the first (lapwright)")
  private List<String> methodNames = new ArrayList<>();

  @Option(
      names = "--time",
      defaultValue = "60",
      description = "limit in seconds for each method on each instance (60)")
  private double limitSeconds;

  @Option(names = "--threads", defaultValue = "2", description = "threads (2)")
  private int threads;

  @Option(
      names = "--warm-up",
      defaultValue = "20",
      description = "seconds for which a method may solve other instances first, untimed (20)")
  private double warmUpSeconds;

  @Option(names = "--csv", description = "one line of CSV a run, nothing else")
  private boolean csv;

  @Option(names = "--summary", description = "only the table of classes")
  private boolean summary;

  @Option(names = "--list", description = "list classes, curves and methods")
  private boolean list;

  private BenchCommand(PrintWriter out, PrintWriter err) {
    this.out = out;
    this.err = err;
  }

  /** Runs it and returns the exit status. */
  static int run(PrintWriter out, PrintWriter err, String... arguments) {
    CommandLine commandLine = new CommandLine(new BenchCommand(out, err));
    commandLine.setOut(out).setErr(err);
    commandLine.setParameterExceptionHandler(
        (exception, ignored) -> {
          err.println(exception.getMessage());
          err.println("'bench --help' shows the options, 'bench --list' the classes and methods.");
          return WRONG_USAGE;
        });
    return commandLine.execute(arguments);
  }

  @Override
  public Integer call() throws IOException {
    if (list) {
      InstanceClasses.descriptions().forEach(line -> out.println("class   " + line));
      GrowthCurve.descriptions().forEach(line -> out.println("curve   " + line));
      Methods.descriptions().forEach(line -> out.println("method  " + line));
      return RIGHT;
    }
    if (paths.isEmpty()
        && classes.isEmpty()
        && weeks.isEmpty()
        && runLines.isEmpty()
        && curves.isEmpty()) {
      throw wrongUsage(
          "no instances: name files or folders, or use --generate, --weeks, --runs, --growth");
    }
    if (count < 1
        || threads < 1
        || weeks.stream().anyMatch(jobs -> jobs < 1)
        || runLines.stream().anyMatch(lines -> lines < 1)
        || !(limitSeconds > 0)
        || !(warmUpSeconds >= 0)) {
      throw wrongUsage("--count, --threads and --time are positive, --warm-up is at least 0");
    }
    try {
      return outFolder == null ? measure() : write(outFolder);
    } catch (IllegalArgumentException e) {
      throw wrongUsage(String.valueOf(e.getMessage()));
    }
  }

  private int measure() {
    List<Method> methods = methodNames.stream().map(Methods::named).toList();
    InstanceReader reader = new InstanceReader();
    List<Instance> instances = new ArrayList<>();
    paths.forEach(path -> instances.addAll(reader.read(path)));
    if (!reader.faults().isEmpty()) {
      reader.faults().forEach(fault -> err.println(fault));
      return WRONG_INPUT;
    }
    instances.addAll(generated());
    Campaign campaign = new Campaign(methods, threads, limitSeconds, warmUpSeconds);
    List<GrowthCurve> growth = curves.stream().flatMap(name -> GrowthCurve.named(name)).toList();
    if (!csv) {
      out.println(Machine.line(threads, limitSeconds));
    }
    List<String> weekFaults = new ArrayList<>();
    if (!weeks.isEmpty()) {
      WeekRuns runs = new WeekRuns(threads, limitSeconds);
      runs.lines(weeks, seed, weekFaults::add).forEach(out::println);
      weekFaults.forEach(err::println);
    }
    if (!runLines.isEmpty()) {
      measureRuns(weekFaults);
    }
    if (instances.isEmpty() && growth.isEmpty()) {
      return weekFaults.isEmpty() ? RIGHT : WRONG_ANSWER;
    }
    List<Run> wrongAtWarmUp = campaign.warmUp();
    wrongAtWarmUp.forEach(this::show);
    boolean right = isRight(wrongAtWarmUp) && weekFaults.isEmpty();
    right &= instances.isEmpty() || isRight(instances, campaign);
    for (GrowthCurve curve : growth) {
      right &= isRight(curve, campaign);
    }
    return right ? RIGHT : WRONG_ANSWER;
  }

  private void measureRuns(List<String> faults) {
    List<RunShop.Kind> kinds =
        runLines.stream()
            .flatMap(lines -> RunShops.kinds(lines).stream())
            .filter(kind -> kind.name().startsWith(runKind))
            .toList();
    if (kinds.isEmpty()) {
      throw wrongUsage("no kind of shop begins with '" + runKind + "'");
    }
    int before = faults.size();
    new RunShops(limitSeconds, !notCompared)
        .lines(kinds, seed, count, this::showLine, faults::add)
        .forEach(out::println);
    faults.subList(before, faults.size()).forEach(err::println);
  }

  private void showLine(String line) {
    if (!summary) {
      out.println(line);
      out.flush();
    }
  }

  private boolean isRight(List<Instance> instances, Campaign campaign) {
    if (!summary) {
      out.println(RunLine.head(csv));
    }
    List<Run> runs = campaign.run(instances, this::show);
    if (!csv) {
      out.println();
      ClassTable.lines(runs, limitSeconds).forEach(out::println);
    }
    return isRight(runs);
  }

  private boolean isRight(GrowthCurve curve, Campaign campaign) {
    List<List<Run>> points = new ArrayList<>();
    for (GrowthCurve.Point point : curve.points()) {
      points.add(campaign.run(InstanceClasses.generate(point.spec(), seed, count), this::show));
    }
    if (!csv) {
      out.println();
      curve.table(points).forEach(out::println);
    }
    return points.stream().allMatch(this::isRight);
  }

  private void show(Run run) {
    if (!summary || !run.faults().isEmpty()) {
      out.println(RunLine.of(run, csv));
      out.flush();
    }
  }

  private boolean isRight(List<Run> runs) {
    long wrong = runs.stream().filter(run -> !run.faults().isEmpty()).count();
    if (wrong > 0) {
      err.println("WRONG: " + wrong + " of " + runs.size() + " answers; see the lines marked so.");
    }
    return wrong == 0;
  }

  private List<Instance> generated() {
    return classes.stream()
        .flatMap(name -> InstanceClasses.resolve(name).stream())
        .distinct()
        .flatMap(classSpec -> InstanceClasses.generate(classSpec, seed, count).stream())
        .toList();
  }

  private int write(Path folder) throws IOException {
    InstanceWriter.write(generated(), folder).forEach(out::println);
    for (int jobs : weeks) {
      Path week = folder.resolve("week-" + jobs);
      WeekFolder.write(Week.of(jobs, seed), week);
      if (stocked) {
        WeekFolder.addStock(Week.of(jobs, seed), seed, week);
      }
      out.println(week);
    }
    return RIGHT;
  }

  private ParameterException wrongUsage(String message) {
    return new ParameterException(Objects.requireNonNull(spec).commandLine(), message);
  }
}

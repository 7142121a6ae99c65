package lapwright.cli;

/** Where the program starts: the only place that exits and that names the standard streams. */
public final class Main {
  private Main() {}

  public static void main(String[] args) {
    Surroundings surroundings = Surroundings.ofProcess(System.out, System.err);
    System.exit(Lapwright.run(args, surroundings));
  }
}

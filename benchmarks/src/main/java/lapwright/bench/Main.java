package lapwright.bench;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.PrintWriter;

/** Starts the command with the standard streams. */
public final class Main {
  private Main() {}

  public static void main(String[] arguments) {
    PrintWriter out = new PrintWriter(System.out, true, UTF_8);
    PrintWriter err = new PrintWriter(System.err, true, UTF_8);
    System.exit(BenchCommand.run(out, err, arguments));
  }
}

package lapwright.cli;

import java.io.OutputStream;

/**
 * What the launcher runs once, so that the virtual machine can archive the classes that the
 * commands load: a small folder is written, planned, cut and checked, and nobody looks at it.
 */
public final class FirstStart {
  private FirstStart() {}

  public static void main(String[] args) {
    Surroundings nobody =
        Surroundings.ofProcess(OutputStream.nullOutputStream(), OutputStream.nullOutputStream());
    Lapwright.run(new String[] {"--help"}, nobody);
  }
}

package lapwright.cli;

import picocli.CommandLine.IVersionProvider;

/** The version that the build wrote into the program's archive. */
final class Version implements IVersionProvider {
  @Override
  public String[] getVersion() {
    String version = Lapwright.class.getPackage().getImplementationVersion();
    return new String[] {"lapwright " + (version == null ? "(not packaged)" : version)};
  }
}

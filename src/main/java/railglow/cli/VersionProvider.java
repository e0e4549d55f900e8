package railglow.cli;

import picocli.CommandLine;

/** The program's version, from the jar's manifest. */
final class VersionProvider implements CommandLine.IVersionProvider {
  @Override
  public String[] getVersion() {
    return new String[] {"railglow " + version()};
  }

  static String version() {
    String version = VersionProvider.class.getPackage().getImplementationVersion();
    return version == null ? "development build" : version;
  }
}

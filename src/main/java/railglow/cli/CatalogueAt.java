package railglow.cli;

import java.io.IOException;
import java.nio.file.Path;
import railglow.casebook.Catalogue;
import railglow.casebook.CatalogueException;
import railglow.casebook.RunSummary;
import railglow.journal.RunFolder;

/**
 * Which catalogue a command uses: the one it is given, else that of the environment variable {@code
 * RAILGLOW_CATALOGUE}, else the file beside the runs.
 */
final class CatalogueAt {
  private CatalogueAt() {}

  /**
   * @param address of a shared catalogue; null when none was given
   * @param runs where runs are kept
   */
  static Catalogue open(String address, Path runs) throws CatalogueException {
    String shared = address == null ? shared() : address;
    return shared == null
        ? Catalogue.besideRuns(runs)
        : Catalogue.open(
            shared,
            environment("RAILGLOW_CATALOGUE_USER"),
            environment("RAILGLOW_CATALOGUE_PASSWORD"));
  }

  /** The address of the environment; null when it names none. */
  static String shared() {
    String address = environment("RAILGLOW_CATALOGUE");
    return address.isEmpty() ? null : address;
  }

  /**
   * Takes a run in that has just ended. A catalogue that can't be used never fails the run: it is
   * said, and the next {@code runs} takes the run in.
   */
  static void take(RunFolder run, Path runs, Terminal terminal) {
    try (Catalogue catalogue = open(null, runs)) {
      catalogue.put(RunSummary.of(run));
    } catch (CatalogueException | IOException e) {
      terminal.complain("The run is not in the catalogue yet: " + e.getMessage());
      terminal.complain("'railglow runs' takes it in later; the run itself is whole.");
    }
  }

  private static String environment(String name) {
    String value = System.getenv(name);
    return value == null ? "" : value;
  }
}

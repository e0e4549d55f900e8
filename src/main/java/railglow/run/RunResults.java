package railglow.run;

import java.io.IOException;
import java.nio.file.Files;
import java.util.Optional;
import railglow.journal.Findings;
import railglow.journal.FindingsFile;
import railglow.journal.NpyFile;
import railglow.journal.RunFolder;
import railglow.run.reduction.Reduced;
import railglow.thermal.Look;
import railglow.thermal.Plane;
import railglow.thermal.inverse.PowerMap;

/** Writes findings and planes into a run folder. */
public final class RunResults {
  private RunResults() {}

  public static void write(
      RunFolder folder, Reduced reduced, Findings findings, Optional<PowerMap> power)
      throws IOException {
    Files.createDirectories(folder.planes());
    Look look = reduced.look();
    if (look != null) {
      write(folder, "in-phase", look.inPhase());
      write(folder, "quadrature", look.quadrature());
      write(folder, "significance", look.significance());
      write(folder, "trust", reduced.trust());
    }
    write(folder, "background", reduced.background());
    if (power.isPresent()) {
      write(folder, "source", power.get().wattsPerSquareMetre());
    }
    FindingsFile.write(folder.findings(), findings);
  }

  private static void write(RunFolder folder, String name, Plane plane) throws IOException {
    if (plane != null) {
      NpyFile.write(folder.plane(name), plane);
    }
  }
}

package railglow.camera;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Recordings of real cameras that lie beside the project, where they do. */
public final class Recordings {
  private Recordings() {}

  public static RecordedFrames open(String name) throws IOException {
    return RawFileFrames.openNpy(path(name + ".npy"), Orientation.AS_STORED, CountScale.unknown());
  }

  /** Skips the test, with the reason, where the file is absent. */
  public static Path path(String file) {
    String folder = System.getProperty("railglow.recordings", "../shared/thermal");
    Path path = Path.of(folder).resolve(file);
    assumeTrue(Files.exists(path), "no recordings at " + folder + " (-Drailglow.recordings=...)");
    return path;
  }
}

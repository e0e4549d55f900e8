package railglow.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import railglow.camera.CameraDescriptor;
import railglow.config.ConfigException;
import railglow.config.MeasuredCamera;
import railglow.config.MeasuredCameraFile;

/** What was measured of a bench's camera: found, checked against the descriptor, and kept. */
final class KeptMeasurements {
  private KeptMeasurements() {}

  /**
   * What is kept beside a bench file.
   *
   * @throws UserMistake when it was measured on another camera
   */
  static Optional<MeasuredCamera> of(Path benchFile, CameraDescriptor camera)
      throws UserMistake, ConfigException {
    Optional<MeasuredCamera> kept = MeasuredCameraFile.readBeside(benchFile);
    if (kept.isPresent() && !kept.get().cameraName().equals(camera.name())) {
      throw new UserMistake(
          MeasuredCameraFile.beside(benchFile)
              + " was measured on the camera '"
              + kept.get().cameraName()
              + "', but this bench has '"
              + camera.name()
              + "'; delete that file, or measure again with `railglow bench`");
    }
    return kept;
  }

  /**
   * Writes beside the bench file.
   *
   * @throws UserMistake when that can't be done
   */
  static Path keep(MeasuredCamera measured, Path benchFile) throws UserMistake {
    Path path = MeasuredCameraFile.beside(benchFile);
    try {
      MeasuredCameraFile.write(measured, path);
      return path;
    } catch (IOException e) {
      throw new UserMistake("what was measured can't be kept in " + path + ": " + e);
    }
  }
}

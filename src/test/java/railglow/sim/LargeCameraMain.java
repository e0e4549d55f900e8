package railglow.sim;

import java.io.IOException;
import railglow.sim.picture.CameraSettings;
import railglow.time.SystemClock;

/**
 * The simulated bench with a large, fast camera that loses no frame, for another process to watch:
 * width, height and rate are the arguments. Says the camera's port and ends with its input.
 */
public final class LargeCameraMain {
  private LargeCameraMain() {}

  public static void main(String[] args) throws IOException {
    CameraSettings usual = CameraSettings.decent();
    CameraSettings large =
        new CameraSettings(
            Integer.parseInt(args[0]),
            Integer.parseInt(args[1]),
            Double.parseDouble(args[2]),
            usual.noiseKelvin(),
            usual.fixedPatternKelvin(),
            usual.rowNoiseKelvin(),
            usual.columnNoiseKelvin(),
            usual.driftKelvin(),
            usual.lagSeconds(),
            1,
            0,
            0,
            usual.warmUpKelvin(),
            usual.warmUpSeconds(),
            usual.latencySeconds(),
            0,
            0,
            0,
            0,
            usual.deadPixels(),
            usual.flickeringPixels());
    try (SimulatedBench bench =
        SimulatedBench.start(
            BenchScenarios.hx12().withCamera(large), BenchPorts.ANY, SystemClock.INSTANCE)) {
      System.out.println("camera port " + bench.cameraAddress().getPort());
      while (System.in.read() >= 0) {
        // whoever started this is still there
      }
    }
  }
}

package railglow.camera;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import railglow.process.ChildJava;
import railglow.sim.LargeCameraMain;

/** 640 x 512 at 60 Hz: the simulated bench's camera in a process of its own, and its descriptor. */
final class LargeCamera implements AutoCloseable {
  static final int WIDTH = 640;
  static final int HEIGHT = 512;
  static final int RATE = 60;
  private static final String PORT = "camera port ";
  private final Process process;
  private final String address;

  private LargeCamera(Process process, String address) {
    this.process = process;
    this.address = address;
  }

  static LargeCamera start() throws IOException {
    Process process =
        ChildJava.of(
                List.of("-XX:+UseSerialGC", "-Xmx512m"),
                LargeCameraMain.class,
                WIDTH + "",
                HEIGHT + "",
                RATE + "")
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    BufferedReader said =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    String line = said.readLine();
    if (line == null || !line.startsWith(PORT)) {
      process.destroyForcibly();
      throw new IOException("the simulated camera did not start: " + line);
    }
    return new LargeCamera(process, "tcp://127.0.0.1:" + line.substring(PORT.length()));
  }

  String address() {
    return address;
  }

  /** As the simulated bench sends its frames, with their counter. */
  static CameraDescriptor counted() {
    return described(
        RawLayout.packed(WIDTH, HEIGHT, SampleType.U16, Endian.LITTLE)
            .withHeader(16, FrameSourceContract.counter()));
  }

  /** Nothing but pixels. */
  static CameraDescriptor bare() {
    return described(RawLayout.packed(WIDTH, HEIGHT, SampleType.U16, Endian.LITTLE));
  }

  private static CameraDescriptor described(RawLayout layout) {
    return new CameraDescriptor(
        "large camera",
        layout,
        CountScale.linear(0.01, -273.15),
        RATE,
        0.05,
        0.04,
        0.01,
        Double.POSITIVE_INFINITY,
        1);
  }

  @Override
  public void close() {
    process.destroy();
  }
}

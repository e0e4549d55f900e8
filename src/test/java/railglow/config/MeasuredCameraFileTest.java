package railglow.config;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.camera.CameraDescriptor;
import railglow.camera.alignment.Alignment;
import railglow.camera.noise.NoiseFigures;
import railglow.thermal.PulseNoise;

class MeasuredCameraFileTest {
  private static final Instant WHEN = Instant.parse("2026-01-31T12:00:00Z");
  private static final NoiseFigures FIGURES =
      new NoiseFigures(
          250,
          10,
          0.0512,
          0.0501,
          0.125,
          0.02,
          -0.01,
          0.010,
          0.020,
          0.040,
          new double[] {0.04, 0.08, 0.16},
          new double[] {0.05, 0.036, 0.026});
  private static final MeasuredCamera ALL =
      MeasuredCamera.nothing("simulated \"camera\"")
          .with(MeasuredTimes.of(alignment(), WHEN))
          .with(new MeasuredNoise(WHEN, true, FIGURES));

  @TempDir Path folder;

  private static Alignment alignment() {
    return new Alignment(0.0412, 0.0018, 0.0103, 0.0021, true, 0.0515, 0.0015, 4, 0.05, 48, 1800);
  }

  @Test
  void whatWasKeptComesBackAsItWas() throws IOException, ConfigException {
    Path bench = folder.resolve("bench-mine.yaml");
    Path kept = MeasuredCameraFile.beside(bench);
    assertEquals("bench-mine-measured.yaml", kept.getFileName().toString());
    assertEquals(Optional.empty(), MeasuredCameraFile.readBeside(bench));
    MeasuredCameraFile.write(ALL, kept);
    MeasuredCamera read = MeasuredCameraFile.readBeside(bench).orElseThrow();
    assertEquals(ALL.cameraName(), read.cameraName());
    MeasuredTimes times = read.times().orElseThrow();
    assertEquals(WHEN, times.measured());
    assertEquals(0.0412, times.latencySeconds(), 1e-9);
    assertEquals(0.0018, times.latencyErrorSeconds(), 1e-9);
    assertEquals(0.0103, times.timeConstantSeconds(), 1e-9);
    assertEquals(0.0021, times.timeConstantErrorSeconds(), 1e-9);
    assertEquals(48, times.pulses());
    NoiseFigures figures = read.noise().orElseThrow().figures();
    assertTrue(read.noise().get().inKelvin());
    assertEquals(0.0512, figures.temporal(), 1e-12);
    assertEquals(-0.01, figures.verticalCorrelation(), 1e-12);
    assertArrayEquals(FIGURES.averagingSeconds(), figures.averagingSeconds(), 1e-12);
    assertArrayEquals(FIGURES.allanDeviations(), figures.allanDeviations(), 1e-12);
  }

  @Test
  void measuredTimesAndNoiseStandInPlaceOfTheDescriptors() throws ConfigException {
    CameraDescriptor camera =
        ALL.applied(CameraDescriptorFile.read(Path.of("instruments/camera-simulated.yaml")));
    assertEquals(0.0412, camera.latencySeconds());
    assertEquals(0.0103, camera.timeConstantSeconds());
    assertEquals(0.0512, camera.noiseKelvin());
  }

  @Test
  void aForecastGetsTheNoiseWithItsCorrelationAndNoneInCounts() {
    double allan = FIGURES.allanDeviationAt(0.15);
    PulseNoise noise = ALL.pulseNoise(25, 0.3).orElseThrow();
    assertEquals(
        new PulseNoise(0.0512, 25, 0.125, 1)
            .withNeighbours(FIGURES.horizontalCorrelation(), FIGURES.verticalCorrelation())
            .withLines(FIGURES.rowTogether(), FIGURES.columnTogether())
            .measuredAt(0.3, allan),
        noise);
    assertEquals(2 * allan * allan, noise.quadratureVariance(0.3), 1e-12);
    MeasuredCamera counts = ALL.with(new MeasuredNoise(WHEN, false, FIGURES));
    assertEquals(Optional.empty(), counts.pulseNoise(25, 1));
    assertEquals(Optional.empty(), MeasuredCamera.nothing("any").pulseNoise(25, 1));
  }

  @Test
  void aNegativeCorrelationIsTakenAsNone() {
    NoiseFigures f = FIGURES.scaled(1);
    NoiseFigures negative =
        new NoiseFigures(
            f.frames(),
            f.seconds(),
            f.temporal(),
            f.frameToFrame(),
            -0.03,
            0,
            0,
            0,
            0,
            0,
            f.averagingSeconds(),
            f.allanDeviations());
    MeasuredCamera measured = ALL.with(new MeasuredNoise(WHEN, true, negative));
    assertEquals(0, measured.pulseNoise(25, 1).orElseThrow().correlation());
  }

  @Test
  void whatCantBeIsRefusedWithItsLine() throws IOException {
    Path path = folder.resolve("bad-measured.yaml");
    String text = MeasuredCameraFile.text(ALL);
    Files.writeString(path, text.replace("latency: 41.2 ms", "latency: -3 ms"));
    assertTrue(complaint(path).contains("'times.latency' is -3 ms; allowed is 0 s to 5 s"));
    Files.writeString(path, text.replace("80 ms = 36 mK", "20 ms = 36 mK"));
    assertTrue(complaint(path).contains("must ascend in time"));
    Files.writeString(path, text.replace("unit: kelvin", "unit: apples"));
    assertTrue(complaint(path).contains("'noise.unit' is 'apples'"));
    Files.writeString(path, text.replace(WHEN.toString(), "yesterday"));
    assertTrue(complaint(path).contains("write a time like"));
  }

  private static String complaint(Path path) {
    return assertThrows(ConfigException.class, () -> MeasuredCameraFile.read(path)).getMessage();
  }
}

package railglow.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import railglow.camera.CameraDescriptor;
import railglow.camera.CameraProfile;
import railglow.camera.Endian;
import railglow.camera.FrameDecoder;
import railglow.camera.Orientation;
import railglow.camera.SampleType;
import railglow.camera.TelemetryField;
import railglow.thermal.Samples;

class CameraDescriptorFileTest {
  private static final String SMALLEST =
      """
      name: small
      frame:
        width: 4
        height: 3
        sample: u8
      rate: 9 Hz
      latency: 60 ms
      time-constant: 12 ms
      """;

  @Test
  void everyShippedDescriptorCanBeRead() throws IOException, ConfigException {
    try (Stream<Path> files = Files.list(Path.of("instruments"))) {
      List<Path> cameras =
          files.filter(file -> file.getFileName().toString().startsWith("camera-")).toList();
      assertTrue(cameras.size() >= 3, cameras.toString());
      for (Path file : cameras) {
        assertFalse(CameraDescriptorFile.read(file).name().isBlank());
      }
    }
  }

  @Test
  void theSimulatedCameraIsAsItsStreamIsDescribed() throws ConfigException {
    CameraDescriptor camera =
        CameraDescriptorFile.read(Path.of("instruments/camera-simulated.yaml"));
    assertEquals(16 + 256 * 192 * 2, camera.layout().frameBytes());
    assertEquals(16, camera.layout().firstPixelByte());
    assertEquals(
        new TelemetryField(0, 4, Endian.LITTLE), camera.layout().telemetry().counter().get());
    assertEquals(new TelemetryField(8, 8, Endian.LITTLE), camera.layout().telemetry().time().get());
    assertEquals(1e-6, camera.layout().telemetry().timeTickSeconds(), 1e-18);
    CameraProfile profile = camera.profile();
    assertEquals(25.0, profile.celsius(29815), 1e-9);
    assertEquals(0.05, profile.noiseKelvin());
  }

  @Test
  void whatIsLeftOutHasItsPlainMeaning() throws ConfigException {
    CameraDescriptor camera = read(SMALLEST);
    assertEquals(12, camera.layout().frameBytes());
    assertFalse(camera.profile().hasKelvin());
    assertTrue(Double.isNaN(camera.noiseKelvin()));
    assertEquals(Orientation.AS_STORED, camera.layout().orientation());
  }

  @Test
  void aTurnedImageSwapsItsSides() throws ConfigException {
    CameraProfile profile = read(SMALLEST + "orientation:\n  turn: quarter\n").profile();
    assertEquals(3, profile.width());
    assertEquals(4, profile.height());
  }

  @Test
  void aSignedCameraHasItsZeroInTheMiddle() throws ConfigException {
    String text =
        SMALLEST.replace("u8", "i16\n  byte-order: big")
            + "scale:\n  kelvin-per-count: 100 mK\n  celsius-at-zero: 0 degC\n";
    CameraDescriptor camera = read(text);
    assertEquals(SampleType.I16, camera.layout().sample());
    assertEquals(0, camera.profile().celsius(32768), 1e-9);
    assertEquals(-1, camera.profile().celsius(32758), 1e-9);
  }

  @Test
  void whereHotIsDarkTheImageIsTurnedOver() throws ConfigException {
    for (String sample : List.of("u8", "u14", "u16", "i16", "f32")) {
      CameraDescriptor camera =
          read(
              SMALLEST.replace("u8", sample + "\n  byte-order: little")
                  + "scale:\n  kelvin-per-count: -100 mK\n  celsius-at-zero: 30 degC\n");
      assertEquals(0.1, camera.profile().kelvinPerCount());
      byte[] bytes = new byte[camera.layout().frameBytes()];
      ByteBuffer raw = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
      switch (sample) {
        case "u8" -> raw.put((byte) 50);
        case "f32" -> raw.putFloat(50);
        default -> raw.putShort((short) 50);
      }
      FrameDecoder decoder = new FrameDecoder(camera.layout(), camera.scale());
      Samples image = decoder.newSamples();
      decoder.decode(bytes, 0, image);
      assertEquals(25, camera.profile().celsius(image.valueAt(0)), 1e-4, sample);
      assertEquals(30, camera.profile().celsius(image.valueAt(1)), 1e-4, sample);
    }
  }

  @Test
  void theEndOfTheScaleIsThatOfTheSamplesUnlessTheFileNamesOne() throws ConfigException {
    String kelvin = "scale:\n  kelvin-per-count: 100 mK\n  celsius-at-zero: -10 degC\n";
    assertEquals(255, read(SMALLEST).saturationValue());
    assertTrue(Double.isNaN(read(SMALLEST).hottestCelsius()));
    assertEquals(15.5, read(SMALLEST + kelvin).hottestCelsius(), 1e-9);
    assertEquals(10, read(SMALLEST + kelvin + "saturation: 200\n").hottestCelsius(), 1e-9);
    String signed = SMALLEST.replace("u8", "i16\n  byte-order: big") + kelvin;
    assertEquals(3266.7, read(signed).hottestCelsius(), 1e-9);
    assertEquals(90, read(signed + "saturation: 1000\n").hottestCelsius(), 1e-9);
    String dark = kelvin.replace("100 mK", "-100 mK");
    assertEquals(0xFFFF, read(SMALLEST + dark).saturationValue());
    assertEquals(-12, read(SMALLEST + dark + "saturation: 20\n").hottestCelsius(), 1e-9);
    String table = "scale:\n  table:\n    - 0 = -20 degC\n    - 255 = 31 degC\n";
    assertEquals(31, read(SMALLEST + table).hottestCelsius(), 1e-6);
    assertEquals(
        Double.POSITIVE_INFINITY,
        read(SMALLEST.replace("u8", "f32\n  byte-order: big") + kelvin).hottestCelsius());
  }

  @Test
  void aTableOfCountsIsRead() throws ConfigException {
    String table = "scale:\n  table:\n    - 0 = -20 degC\n    - 255 = 31 degC\n";
    CameraDescriptor camera = read(SMALLEST + table);
    assertTrue(camera.scale().isTable());
    assertEquals(1, camera.profile().kelvinPerCount());
    assertEquals(0, camera.profile().celsiusAtZero());
  }

  @Test
  void everyMistakeIsNamedWithItsLine() {
    assertEquals(
        List.of(
            "camera.yaml:3: 'frame.width' is 0; allowed is 1 to 8192",
            "camera.yaml:6: 'rate' can't be used: '9' has no unit; write it like '1.5 Hz', '20"
                + " mHz'",
            "camera.yaml:9: 'colour' is not a key known here"),
        mistakes(SMALLEST.replace("width: 4", "width: 0").replace("9 Hz", "9") + "colour: red\n")
            .stream()
            .map(text -> text.replaceAll("here;.*", "here"))
            .toList());
  }

  @Test
  void aFrameSizeThatDoesNotAddUpIsRefusedWithBothSums() {
    List<String> mistakes = mistakes(SMALLEST.replace("u8", "u8\n  frame-bytes: 13"));
    assertEquals(
        List.of(
            "camera.yaml:6: 'frame.frame-bytes' is 13, but header, rows and trailer add up to 12"),
        mistakes);
  }

  @Test
  void telemetryOutsideTheFrameIsRefused() {
    String telemetry = "telemetry:\n  counter:\n    offset: 10\n    bytes: 4\n";
    assertTrue(mistakes(SMALLEST + telemetry).get(0).contains("telemetry ends at byte 14"));
    String odd = "telemetry:\n  counter:\n    offset: 1\n    bytes: 3\n";
    assertTrue(mistakes(SMALLEST + odd).get(0).contains("allowed is 1, 2, 4 or 8"));
    String hex = "telemetry:\n  marker:\n    offset: 1\n    hex: abc\n";
    assertTrue(mistakes(SMALLEST + hex).get(0).contains("pairs of hexadecimal digits"));
  }

  @Test
  void aTableThatDescendsOrHasNoUnitIsRefused() {
    for (String rows : List.of("[5 = 1 degC, 4 = 2 degC]", "[1 = 2, 3 = 4]", "[]", "[5]")) {
      String text = SMALLEST + "scale:\n  table: " + rows + "\n";
      assertTrue(mistakes(text).get(0).contains("'scale.table'"), rows);
    }
  }

  private static CameraDescriptor read(String text) throws ConfigException {
    return CameraDescriptorFile.from(ConfigFile.parse(Path.of("camera.yaml"), text));
  }

  private static List<String> mistakes(String text) {
    return assertThrows(ConfigException.class, () -> read(text)).problems().stream()
        .map(ConfigProblem::toString)
        .toList();
  }
}

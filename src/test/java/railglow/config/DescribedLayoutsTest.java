package railglow.config;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.camera.CameraDescriptor;
import railglow.camera.FrameDecoder;
import railglow.thermal.Samples;

/**
 * Each thing a descriptor can say of a layout, from the words in the file to the pixels: images of
 * 2 x 2, written out byte by byte.
 */
class DescribedLayoutsTest {
  @TempDir Path folder;

  @Test
  void eightBits() throws Exception {
    seen("sample: u8", "", new int[] {1, 2, 3, 255}, 1, 2, 3, 255);
  }

  @Test
  void fourteenBitsWithFlagsAbove() throws Exception {
    int[] bytes = {0x01, 0xC0, 0xFF, 0xFF, 0x02, 0x40, 0x03, 0x80};
    seen("sample: u14\n  byte-order: little", "", bytes, 1, 16383, 2, 3);
  }

  @Test
  void sixteenBitsLittleEndFirst() throws Exception {
    int[] bytes = {0x34, 0x12, 0xFF, 0xFF, 0, 0, 1, 0};
    seen("sample: u16\n  byte-order: little", "", bytes, 0x1234, 65535, 0, 1);
  }

  @Test
  void sixteenBitsBigEndFirst() throws Exception {
    int[] bytes = {0x12, 0x34, 0xFF, 0xFF, 0, 0, 0, 1};
    seen("sample: u16\n  byte-order: big", "", bytes, 0x1234, 65535, 0, 1);
  }

  @Test
  void sixteenBitsWithASign() throws Exception {
    int[] bytes = {0xFF, 0xFF, 0x01, 0x00, 0x00, 0x80, 0xFF, 0x7F};
    String scale = "scale:\n  kelvin-per-count: 10 mK\n  celsius-at-zero: 20 degC\n";
    CameraDescriptor camera = camera("sample: i16\n  byte-order: little", scale);
    Samples image = decoded(camera, bytes);
    assertEquals(19.99, camera.profile().celsius(image.valueAt(0)), 1e-9);
    assertEquals(20.01, camera.profile().celsius(image.valueAt(1)), 1e-9);
    assertEquals(20 - 327.68, camera.profile().celsius(image.valueAt(2)), 1e-9);
    assertEquals(20 + 327.67, camera.profile().celsius(image.valueAt(3)), 1e-9);
  }

  @Test
  void rowsLongerThanTheirPixels() throws Exception {
    seen("sample: u8\n  row-stride-bytes: 3", "", new int[] {1, 2, 99, 3, 4, 99}, 1, 2, 3, 4);
  }

  @Test
  void anImageThatBeginsInALaterColumn() throws Exception {
    seen("sample: u8\n  first-column: 1", "", new int[] {99, 1, 2, 99, 3, 4}, 1, 2, 3, 4);
  }

  @Test
  void bytesBeforeAndBehindTheImage() throws Exception {
    String frame = "sample: u8\n  header-bytes: 2\n  trailer-bytes: 1";
    seen(frame, "", new int[] {99, 98, 1, 2, 3, 4, 97}, 1, 2, 3, 4);
  }

  @Test
  void rowsOfTelemetryAboveAndBelow() throws Exception {
    String frame = "sample: u8\n  header-rows: 1\n  trailer-rows: 2";
    seen(frame, "", new int[] {99, 98, 1, 2, 3, 4, 97, 96, 95, 94}, 1, 2, 3, 4);
  }

  @Test
  void thePictureAboveAndTheCountsBelowInOneTallerFrame() throws Exception {
    String frame = "sample: u16\n  byte-order: little\n  header-rows: 2";
    int[] bytes = {9, 9, 9, 9, 9, 9, 9, 9, 1, 0, 2, 0, 3, 0, 4, 0};
    seen(frame, "", bytes, 1, 2, 3, 4);
  }

  @Test
  void telemetryWithCounterAndTime() throws Exception {
    CameraDescriptor camera =
        camera(
            "sample: u8\n  header-bytes: 6",
            """
            telemetry:
              counter:
                offset: 0
                bytes: 2
                byte-order: big
              time:
                offset: 2
                bytes: 4
                tick: 1 ms
            """);
    byte[] frame = bytes(new int[] {0x01, 0x02, 0x10, 0x27, 0, 0, 1, 2, 3, 4});
    assertEquals(0x0102, camera.layout().telemetry().counter().orElseThrow().read(frame, 0));
    assertEquals(10_000, camera.layout().telemetry().time().orElseThrow().read(frame, 0));
    assertEquals(1e-3, camera.layout().telemetry().timeTickSeconds());
    assertEquals(4, decoded(camera, frame).valueAt(3));
  }

  @Test
  void imagesMirroredAndTurned() throws Exception {
    // 1 2 over 3 4
    int[] bytes = {1, 2, 3, 4};
    seen("sample: u8", "orientation:\n  mirror: left-right\n", bytes, 2, 1, 4, 3);
    seen("sample: u8", "orientation:\n  mirror: up-down\n", bytes, 3, 4, 1, 2);
    seen("sample: u8", "orientation:\n  turn: quarter\n", bytes, 3, 1, 4, 2);
    seen("sample: u8", "orientation:\n  turn: half\n", bytes, 4, 3, 2, 1);
    seen("sample: u8", "orientation:\n  turn: three-quarters\n", bytes, 2, 4, 1, 3);
    String both = "orientation:\n  mirror: left-right\n  turn: quarter\n";
    seen("sample: u8", both, bytes, 4, 2, 3, 1);
  }

  @Test
  void countsToDegreesByScaleAndOffset() throws Exception {
    String scale = "scale:\n  kelvin-per-count: 500 mK\n  celsius-at-zero: -40 degC\n";
    CameraDescriptor camera = camera("sample: u8", scale);
    assertEquals(10, camera.profile().celsius(decoded(camera, 100, 0, 0, 0).valueAt(0)), 1e-9);
  }

  @Test
  void countsToDegreesByATable() throws Exception {
    String table = "scale:\n  table:\n    - 10 = 0 degC\n    - 20 = 10 degC\n    - 40 = 20 degC\n";
    seen("sample: u8", table, new int[] {10, 15, 30, 41}, 0, 5, 15, Double.NaN);
  }

  @Test
  void countsThatMeanNothingKnownStayCounts() throws Exception {
    CameraDescriptor camera = camera("sample: u8", "");
    assertEquals(false, camera.profile().hasKelvin());
    assertEquals(7, decoded(camera, 7, 0, 0, 0).valueAt(0));
  }

  private void seen(String frame, String more, int[] bytes, double... expected) throws Exception {
    CameraDescriptor camera = camera(frame, more);
    assertEquals(bytes.length, camera.layout().frameBytes());
    Samples image = decoded(camera, bytes);
    double[] values = new double[expected.length];
    for (int i = 0; i < values.length; i++) {
      values[i] = image.valueAt(i);
    }
    assertArrayEquals(expected, values, frame + more);
  }

  private static Samples decoded(CameraDescriptor camera, int... bytes) {
    return decoded(camera, bytes(bytes));
  }

  private static Samples decoded(CameraDescriptor camera, byte[] bytes) {
    FrameDecoder decoder = new FrameDecoder(camera.layout(), camera.scale());
    Samples image = decoder.newSamples();
    decoder.decode(bytes, 0, image);
    return image;
  }

  private static byte[] bytes(int... values) {
    byte[] bytes = new byte[values.length];
    for (int i = 0; i < bytes.length; i++) {
      bytes[i] = (byte) values[i];
    }
    return bytes;
  }

  private CameraDescriptor camera(String frame, String more) throws IOException, ConfigException {
    Path file = folder.resolve("camera.yaml");
    Files.writeString(
        file,
        "name: small\nframe:\n  width: 2\n  height: 2\n  "
            + frame
            + "\n"
            + more
            + "rate: 9 Hz\nlatency: 60 ms\ntime-constant: 12 ms\n");
    return CameraDescriptorFile.read(file);
  }
}

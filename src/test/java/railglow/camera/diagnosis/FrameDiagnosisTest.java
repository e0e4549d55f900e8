package railglow.camera.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import railglow.camera.CameraDescriptor;
import railglow.camera.CountScale;
import railglow.camera.Endian;
import railglow.camera.RawLayout;
import railglow.camera.SampleType;
import railglow.thermal.CountSamples;

class FrameDiagnosisTest {
  private static final int W = 80;
  private static final int H = 60;

  @Test
  void aFrameReadRightGivesNoFinding() {
    assertEquals(List.of(), findings(packed(W, SampleType.U16, Endian.LITTLE), scene(0)));
  }

  @Test
  void theWrongByteOrderIsNamedWithTheRightOne() {
    List<String> findings = findings(packed(W, SampleType.U16, Endian.BIG), scene(0));
    assertTrue(findings.get(0).startsWith("the byte order looks wrong"), findings.toString());
    assertTrue(findings.get(0).contains("byte-order: little"), findings.toString());
  }

  @Test
  void aWrongRowLengthIsNamedWithTheRightOne() {
    CameraDescriptor camera = camera(RawLayout.packed(75, 64, SampleType.U16, Endian.LITTLE));
    List<String> findings = FrameDiagnosis.of(camera, scene(0));
    assertTrue(
        findings.contains(
            "rows look 80 samples long, not 75: check width and row-stride-bytes (160)"),
        findings.toString());
  }

  @Test
  void flagsInTheUpperBitsAreToldFromCounts() {
    byte[] bytes = scene(0);
    Random random = new Random(3);
    for (int i = 1; i < bytes.length; i += 2) {
      bytes[i] = (byte) (bytes[i] & 0x3F | random.nextInt(4) << 6);
    }
    List<String> findings = findings(packed(W, SampleType.U16, Endian.LITTLE), bytes);
    assertTrue(findings.get(0).contains("sample: u14"), findings.toString());
  }

  @Test
  void telemetryRowsAreNamed() {
    byte[] bytes = scene(0);
    new Random(5).nextBytes(bytes);
    System.arraycopy(scene(0), 4 * W, bytes, 4 * W, bytes.length - 4 * W);
    List<String> findings = findings(packed(W, SampleType.U16, Endian.LITTLE), bytes);
    assertTrue(
        findings.contains(
            "rows 0-1 are unlike the others: they may be telemetry (header-rows, trailer-rows)"),
        findings.toString());
  }

  @Test
  void constantRowsAreNamed() {
    byte[] bytes = scene(0);
    java.util.Arrays.fill(bytes, (H - 3) * 2 * W, bytes.length, (byte) 0);
    List<String> findings = findings(packed(W, SampleType.U16, Endian.LITTLE), bytes);
    assertTrue(findings.stream().anyMatch(f -> f.startsWith("rows 57-59 are all of one value")));
  }

  @Test
  void aColourPictureInPlaceOfCountsIsTold() {
    byte[] bytes = new byte[2 * W * H];
    for (int i = 0; i < W * H; i++) {
      bytes[2 * i] = (byte) (60 + i % W);
      bytes[2 * i + 1] = (byte) (i % 2 == 0 ? 110 : 145);
    }
    List<String> findings = findings(packed(W, SampleType.U16, Endian.LITTLE), bytes);
    assertTrue(findings.stream().anyMatch(f -> f.contains("colour picture")), findings.toString());
  }

  @Test
  void anImpossibleTemperatureIsQuestioned() {
    List<String> findings = findings(packed(W, SampleType.U16, Endian.LITTLE), scene(-20_000));
    assertTrue(findings.get(0).startsWith("the scene would be at -175 degC"), findings.toString());
  }

  @Test
  void emptyAndWrongSizedFramesAreTold() {
    RawLayout layout = packed(W, SampleType.U16, Endian.LITTLE);
    assertTrue(findings(layout, new byte[2 * W * H]).get(0).contains("every pixel has the same"));
    assertTrue(findings(layout, new byte[7]).get(0).startsWith("the frame has 7 bytes"));
  }

  @Test
  void thePictureShowsWarmPlacesBright() throws IOException {
    CountSamples image = new CountSamples(4, 2, new short[] {9, 9, 9, 9, 9, 9, 9, 30});
    BufferedImage picture = ImageIO.read(new ByteArrayInputStream(FramePicture.png(image, 3)));
    assertEquals(12, picture.getWidth());
    assertTrue(picture.getRaster().getSample(11, 5, 0) > picture.getRaster().getSample(0, 0, 0));
  }

  private static List<String> findings(RawLayout layout, byte[] frame) {
    return FrameDiagnosis.of(camera(layout), frame);
  }

  private static RawLayout packed(int width, SampleType sample, Endian endian) {
    return RawLayout.packed(width, W * H / width, sample, endian);
  }

  private static CameraDescriptor camera(RawLayout layout) {
    return new CameraDescriptor(
        "test",
        layout,
        CountScale.linear(0.01, -273.15),
        25,
        0.05,
        0.04,
        0.01,
        Double.POSITIVE_INFINITY,
        1);
  }

  /** A smooth scene of a few kelvin at 25 degrees with 50 mK of noise, little end first. */
  private static byte[] scene(int offset) {
    Random random = new Random(1);
    ByteBuffer bytes = ByteBuffer.allocate(2 * W * H).order(ByteOrder.LITTLE_ENDIAN);
    for (int row = 0; row < H; row++) {
      for (int column = 0; column < W; column++) {
        double waves = 150 * Math.sin(0.11 * column) + 120 * Math.cos(0.13 * row + 0.02 * column);
        bytes.putShort((short) Math.round(29_815 + offset + waves + 5 * random.nextGaussian()));
      }
    }
    return bytes.array();
  }
}

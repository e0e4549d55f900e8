package railglow.camera;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import railglow.thermal.CountSamples;
import railglow.thermal.FloatSamples;
import railglow.thermal.Samples;

class FrameDecoderTest {
  @Test
  void aPackedFrameIsReadInItsByteOrder() {
    byte[] bytes = {1, 2, 3, 4};
    assertArrayEquals(
        new short[] {0x0201, 0x0403}, counts(bytes, SampleType.U16, Endian.LITTLE).counts());
    assertArrayEquals(
        new short[] {0x0102, 0x0304}, counts(bytes, SampleType.U16, Endian.BIG).counts());
  }

  @Test
  void theUpperTwoBitsOfFourteenBitSamplesAreCutOff() {
    byte[] bytes = {(byte) 0xFF, (byte) 0xFF, 0, (byte) 0xC1};
    assertArrayEquals(
        new short[] {0x3FFF, 0x0100}, counts(bytes, SampleType.U14, Endian.LITTLE).counts());
  }

  @Test
  void signedSamplesKeepTheirOrderAsCounts() {
    byte[] bytes = {(byte) 0xFF, (byte) 0xFF, 1, 0};
    CountSamples image = counts(bytes, SampleType.I16, Endian.LITTLE);
    assertEquals(32767, image.valueAt(0));
    assertEquals(32769, image.valueAt(1));
  }

  @Test
  void aPictureAboveTheCountsIsSkipped() {
    RawLayout layout =
        new RawLayout(
            2,
            1,
            SampleType.U16,
            Endian.LITTLE,
            4,
            0,
            1,
            0,
            0,
            0,
            Orientation.AS_STORED,
            Telemetry.NONE);
    CountSamples image = new CountSamples(2, 1);
    new FrameDecoder(layout, CountScale.unknown())
        .decode(new byte[] {9, 9, 9, 9, 7, 0, 8, 0}, 0, image);
    assertArrayEquals(new short[] {7, 8}, image.counts());
  }

  @Test
  void aQuarterTurnClockwiseBringsTheLeftColumnToTheTop() {
    // Stored rows 1 2 3 / 4 5 6; turned clockwise: 4 1 / 5 2 / 6 3.
    RawLayout layout =
        RawLayout.packed(3, 2, SampleType.U8, Endian.LITTLE)
            .withOrientation(new Orientation(Orientation.Mirror.NONE, Orientation.Turn.QUARTER));
    CountSamples image = new CountSamples(2, 3);
    new FrameDecoder(layout, CountScale.unknown()).decode(new byte[] {1, 2, 3, 4, 5, 6}, 0, image);
    assertArrayEquals(new short[] {4, 1, 5, 2, 6, 3}, image.counts());
  }

  @Test
  void aTableGivesDegreesAndNothingOutsideIt() {
    CountScale table = CountScale.table(new double[] {10, 20, 40}, new double[] {0, 10, 20});
    RawLayout layout = RawLayout.packed(4, 1, SampleType.U8, Endian.LITTLE);
    FloatSamples image = new FloatSamples(4, 1);
    new FrameDecoder(layout, table).decode(new byte[] {10, 15, 30, 41}, 0, image);
    assertArrayEquals(new float[] {0, 5, 15, Float.NaN}, image.values());
  }

  @Test
  void aRowTooShortForItsPixelsIsRefused() {
    assertThrows(
        IllegalArgumentException.class,
        () ->
            new RawLayout(
                3,
                1,
                SampleType.U16,
                Endian.LITTLE,
                5,
                0,
                0,
                0,
                0,
                0,
                Orientation.AS_STORED,
                Telemetry.NONE));
  }

  /** Against a reference that asks for every pixel by itself, byte by byte. */
  @Property(tries = 300, seed = "41")
  void everyLayoutGivesWhatTheSlowReferenceGives(
      @ForAll("layouts") RawLayout layout, @ForAll long seed) {
    byte[] bytes = new byte[layout.frameBytes() + 3];
    new Random(seed).nextBytes(bytes);
    FrameDecoder decoder = new FrameDecoder(layout, CountScale.unknown());
    Samples image = decoder.newSamples();
    decoder.decode(bytes, 3, image);
    assertEquals(layout.laidWidth(), image.width());
    for (int y = 0; y < image.height(); y++) {
      for (int x = 0; x < image.width(); x++) {
        double expected = SlowReference.value(layout, bytes, 3, x, y);
        assertEquals(expected, image.valueAt(y * image.width() + x));
      }
    }
  }

  @Provide
  Arbitrary<RawLayout> layouts() {
    Arbitrary<Integer> side = Arbitraries.integers().between(1, 9);
    Arbitrary<Integer> extra = Arbitraries.integers().between(0, 5);
    Arbitrary<Orientation> orientation =
        Combinators.combine(
                Arbitraries.of(Orientation.Mirror.class), Arbitraries.of(Orientation.Turn.class))
            .as(Orientation::new);
    return Combinators.combine(
            side,
            side,
            Arbitraries.of(SampleType.class),
            Arbitraries.of(Endian.class),
            extra,
            extra,
            extra,
            orientation)
        .as(
            (width, height, sample, endian, a, b, c, turned) ->
                new RawLayout(
                    width,
                    height,
                    sample,
                    endian,
                    (width + c) * sample.bytes() + b,
                    a,
                    b,
                    c,
                    a,
                    c,
                    turned,
                    Telemetry.NONE));
  }

  private static CountSamples counts(byte[] bytes, SampleType sample, Endian endian) {
    CountSamples image = new CountSamples(2, 1);
    new FrameDecoder(RawLayout.packed(2, 1, sample, endian), CountScale.unknown())
        .decode(bytes, 0, image);
    return image;
  }
}

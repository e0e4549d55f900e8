package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class QuarterAccumulatorTest {
  @Property(tries = 200, seed = "1")
  void countsAreSummedExactly(
      @ForAll @Size(min = 4, max = 40) int[] values,
      @ForAll @IntRange(min = 1, max = 50) int frames) {
    QuarterAccumulator sums = new QuarterAccumulator(2, 2, 0.01);
    long[] expected = new long[4];
    int offset = values[0] & 0xFFFF;
    for (int quarter = 1; quarter <= 4; quarter++) {
      for (int k = 0; k < frames; k++) {
        short count = (short) values[(quarter * 7 + k) % values.length];
        if (quarter == 1 && k == 0) {
          count = (short) offset;
        }
        expected[quarter - 1] += count & 0xFFFF;
        sums.add(quarter, new CountSamples(2, 2, new short[] {count, count, count, count}));
      }
    }
    QuarterMeans means = sums.finish(3);
    Plane[] planes = {means.q1(), means.q2(), means.q3(), means.q4()};
    for (int quarter = 0; quarter < 4; quarter++) {
      double mean = (expected[quarter] / (double) frames - offset) * 0.01;
      assertEquals(mean, planes[quarter].at(1, 1), 1e-6 + 1e-6 * Math.abs(mean));
      assertEquals(frames, means.framesPerQuarter()[quarter]);
    }
    assertEquals(0, sums.framesIn(1));
  }

  /** 257 is what the 16-bit sums of bytes hold; the largest counts fill them. */
  @Test
  void quartersOfAnyLengthAreSummedExactly() {
    for (int frames : new int[] {1, 256, 257, 258, 514, 515, 1000}) {
      QuarterAccumulator sums = new QuarterAccumulator(2, 1, 1);
      for (int quarter = 1; quarter <= 4; quarter++) {
        sums.add(quarter, new CountSamples(2, 1));
        for (int k = 1; k < frames; k++) {
          sums.add(quarter, new CountSamples(2, 1, new short[] {(short) 0xFFFF, (short) 0x80FF}));
        }
      }
      Plane mean = sums.finish(0).q3();
      assertEquals((float) (65535.0 * (frames - 1) / frames), mean.values()[0], 0.01f);
      assertEquals((float) (33023.0 * (frames - 1) / frames), mean.values()[1], 0.01f);
    }
  }

  @Test
  void aCycleRemembersNothingOfTheOneBeforeWhetherThatWasFinishedOrGivenUp() {
    QuarterAccumulator sums = new QuarterAccumulator(129, 67, 1);
    CountSamples frame = new CountSamples(129, 67);
    for (int count = 10; count <= 40; count += 10) {
      Arrays.fill(frame.counts(), (short) count);
      for (int quarter = 1; quarter <= 4; quarter++) {
        sums.add(quarter, frame);
      }
      if (count == 30) {
        sums.reset();
      } else {
        for (float mean : sums.finish(0).q2().values()) {
          assertEquals(count - 10, mean);
        }
      }
    }
  }

  @Test
  void everyPixelOfAnImageOfManyTilesAndAnOddNumberOfPixelsHasItsOwnMean() {
    int width = 129;
    int height = 67;
    QuarterAccumulator sums = new QuarterAccumulator(width, height, 1);
    CountSamples frame = new CountSamples(width, height);
    sums.add(1, frame);
    sums.reset();
    for (int k = 0; k < 12; k++) {
      for (int i = 0; i < width * height; i++) {
        frame.counts()[i] = (short) (65_000 - 7 * i + k);
      }
      sums.add(1 + k / 3, frame);
    }
    QuarterMeans means = sums.finish(0);
    for (int i = 0; i < width * height; i++) {
      assertEquals(65_000 - 7 * i + 10, means.q4().values()[i]);
    }
  }

  @Test
  void smallStepsOnALargePedestalKeepTheirDigits() {
    QuarterAccumulator sums = new QuarterAccumulator(1, 1, 1);
    for (int quarter = 1; quarter <= 4; quarter++) {
      for (int k = 0; k < 1000; k++) {
        short count = (short) (60000 + (quarter == 2 && k == 0 ? 1 : 0));
        sums.add(quarter, new CountSamples(1, 1, new short[] {count}));
      }
    }
    assertEquals(0.001, sums.finish(0).q2().at(0, 0), 1e-9);
  }

  @Test
  void floatsLeaveOutMissingSamplesAndOnlyThose() {
    QuarterAccumulator sums = new QuarterAccumulator(2, 1, 1);
    for (int quarter = 1; quarter <= 4; quarter++) {
      sums.add(quarter, new FloatSamples(2, 1, new float[] {20, Float.NaN}));
      sums.add(quarter, new FloatSamples(2, 1, new float[] {22, Float.NaN}));
      sums.add(quarter, new FloatSamples(2, 1, new float[] {Float.NaN, Float.NaN}));
    }
    QuarterMeans means = sums.finish(0);
    assertEquals(1, means.q3().at(0, 0), 1e-6);
    assertTrue(Float.isNaN(means.q3().at(1, 0)));
  }

  @Test
  void wrongQuartersSizesAndEmptyQuartersAreRefused() {
    QuarterAccumulator sums = new QuarterAccumulator(2, 2, 1);
    CountSamples frame = new CountSamples(2, 2);
    assertThrows(IllegalArgumentException.class, () -> sums.add(0, frame));
    assertThrows(IllegalArgumentException.class, () -> sums.add(5, frame));
    assertThrows(IllegalArgumentException.class, () -> sums.add(1, new CountSamples(2, 1)));
    sums.add(1, frame);
    assertThrows(IllegalStateException.class, () -> sums.finish(0));
  }
}

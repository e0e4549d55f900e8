package railglow.camera;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import railglow.observed.Frame;
import railglow.observed.FrameMark;
import railglow.thermal.CountSamples;

class ArrivalClockTest {
  private static final double LATENCY = 0.045;

  @Test
  void frequentLateArrivalsLeaveTheTimesWithinAMillisecond() {
    Random random = new Random(5);
    List<Sighting> frames =
        stream(3000, n -> LATENCY + 0.0003 * -Math.log(random.nextDouble()) + hiccup(random));
    ArrivalClock clock = ArrivalClock.live(25, LATENCY, true);
    for (int i = 0; i < frames.size(); i++) {
      double error = clock.midExposureNanos(frames.get(i).frame()) * 1e-9 - frames.get(i).truth;
      if (i >= 50) {
        assertTrue(Math.abs(error) < 0.001, "frame " + i + " is off by " + error + " s");
      }
    }
    assertEquals(0.0400004, clock.periodSeconds(), 4e-6);
    // The median of the small delays is 0.0003 ln 2 = 0.2 ms; the stalls raise it a little.
    assertEquals(0.0003, clock.medianLatenessSeconds(), 0.00015);
    assertTrue(clock.highLatenessSeconds() > 0.02, "stalls must show");
    assertEquals(0, clock.framesMissing());
  }

  @Test
  void aWrongNominalRateIsFoundOut() {
    ArrivalClock clock = ArrivalClock.live(9, 0, true);
    for (int n = 0; n < 200; n++) {
      clock.midExposureNanos(frame(n, n / 8.77));
    }
    assertEquals(1 / 8.77, clock.periodSeconds(), 1e-6);
  }

  /** As seen on a real camera: host stamps that alternate between 96 and 128 ms. */
  @Test
  void stampsOnACoarseGridAreSmoothed() {
    ArrivalClock clock = ArrivalClock.live(9, 0, false);
    for (int n = 0; n < 300; n++) {
      double truth = n * 0.114;
      long mid = clock.midExposureNanos(frame(n, Math.ceil(truth / 0.032) * 0.032));
      if (n > 100) {
        assertEquals(truth, mid * 1e-9, 0.005, "frame " + n);
      }
    }
    assertEquals(0, clock.framesMissing());
  }

  @Test
  void aBurstAtTheStartDoesNotBendTheLine() {
    ArrivalClock clock = ArrivalClock.live(25, 0, false);
    for (int n = 0; n < 200; n++) {
      long mid = clock.midExposureNanos(frame(n, Math.max(0.4, 0.04 * n)));
      if (n > 40) {
        assertEquals(0.04 * n, mid * 1e-9, 0.001, "frame " + n);
      }
    }
    assertEquals(0.04, clock.periodSeconds(), 1e-5);
    assertEquals(0, clock.framesMissing());
  }

  @Test
  void countedGapsAreCountedAndMarked() {
    ArrivalClock clock = ArrivalClock.live(25, 0, true);
    for (int n = 0; n < 100; n++) {
      int number = n < 60 ? n : n + 3;
      Frame frame = frame(number, 0.04 * number);
      long mid = clock.midExposureNanos(frame);
      assertEquals(0.04 * number, mid * 1e-9, 1e-6);
      assertEquals(n == 60, frame.marks().contains(FrameMark.AFTER_GAP), "frame " + n);
    }
    assertEquals(3, clock.framesMissing());
  }

  @Test
  void withoutACounterALostFrameIsInferredFromTheTimesAndDoubtIsMarked() {
    ArrivalClock clock = ArrivalClock.live(25, 0, false);
    for (int n = 0; n < 200; n++) {
      double truth = 0.04 * (n < 100 ? n : n + 2);
      Frame frame = frame(n, truth + 0.001 * (n % 3));
      long mid = clock.midExposureNanos(frame);
      boolean doubted = frame.marks().contains(FrameMark.AFTER_GAP);
      assertEquals(n >= 100 && n < 103, doubted, "frame " + n);
      if (n > 30 && !doubted) {
        assertEquals(truth, mid * 1e-9, 0.002, "frame " + n);
      }
    }
    assertEquals(2, clock.framesMissing());
    assertFalse(clock.isInDoubt());
  }

  @Test
  void aStallThatFlushesLaterLosesNoFrame() {
    ArrivalClock clock = ArrivalClock.live(25, 0, false);
    for (int n = 0; n < 200; n++) {
      double truth = 0.04 * n;
      double arrival = n >= 100 && n < 125 ? Math.max(truth, 5.0 + 0.0001 * (n - 100)) : truth;
      long mid = clock.midExposureNanos(frame(n, arrival));
      if (n > 30) {
        assertEquals(truth, mid * 1e-9, 0.002, "frame " + n);
      }
    }
    assertEquals(0, clock.framesMissing());
  }

  @Test
  void framesThatComeInABunchAfterAStallAreNotInDoubtWhereACounterProvesThem() {
    ArrivalClock clock = ArrivalClock.live(25, 0, true);
    for (int n = 0; n < 200; n++) {
      double truth = 0.04 * n;
      double arrival = n >= 100 && n < 125 ? Math.max(truth, 5.0 + 0.0001 * (n - 100)) : truth;
      Frame frame = frame(n, arrival);
      long mid = clock.midExposureNanos(frame);
      assertTrue(frame.marks().isEmpty(), "frame " + n);
      assertEquals(truth, mid * 1e-9, n > 30 ? 0.002 : 0.05, "frame " + n);
    }
  }

  @Test
  void aPauseThatIsNoWholeNumberOfFramesStartsTheLineAnew() {
    ArrivalClock clock = ArrivalClock.live(9, 0, false);
    for (int n = 0; n < 200; n++) {
      double truth = n < 100 ? n / 9.0 : n / 9.0 + 1.83;
      Frame frame = frame(n, truth);
      long mid = clock.midExposureNanos(frame);
      if (!frame.marks().contains(FrameMark.AFTER_GAP)) {
        assertEquals(truth, mid * 1e-9, 0.002, "frame " + n);
      }
    }
    assertEquals(16, clock.framesMissing(), 1);
  }

  @Test
  void aCameraPutBackStartsANewRhythmAtOnce() {
    ArrivalClock clock = ArrivalClock.live(25, 0, true);
    for (int n = 0; n < 100; n++) {
      int number = n < 60 ? n : n + 40;
      double truth = n < 60 ? 0.04 * n : 0.04 * (n + 40) + 0.015;
      assertEquals(truth, clock.midExposureNanos(frame(number, truth)) * 1e-9, 1e-6, "frame " + n);
    }
  }

  @Test
  void aCountedCameraThatChangesItsRateIsFollowedAndItsFramesAreInDoubtMeanwhile() {
    for (double newRate : new double[] {12.5, 20, 24.5, 30, 50}) {
      for (boolean counted : new boolean[] {true, false}) {
        if (!counted && newRate > 20 && newRate < 25) {
          // A little slower and no counter: that is frames lost now and then.
          continue;
        }
        Random random = new Random(8);
        ArrivalClock clock = ArrivalClock.live(25, 0, counted);
        double truth = 0;
        int wrong = 0;
        for (int n = 0; n < 700; n++) {
          Frame frame = frame(n, truth - 0.0005 * Math.log(random.nextDouble()));
          double error = clock.midExposureNanos(frame) * 1e-9 - truth;
          boolean used = !clock.isInDoubt();
          wrong += n > 30 && used && Math.abs(error) > 0.02 ? 1 : 0;
          assertTrue(
              n < 550 || Math.abs(error) < 0.002, newRate + " Hz, frame " + n + ": " + error);
          truth += n < 300 ? 0.04 : 1 / newRate;
        }
        String what = newRate + " Hz, counted " + counted + ", wrong " + wrong;
        // A little faster bends the line by itself, for no frame can come too early.
        assertEquals(newRate == 30 ? 0 : 1, clock.rateChanges(), what);
        assertEquals(1 / newRate, clock.periodSeconds(), 1e-4, what);
        assertTrue(wrong <= 20, what);
      }
    }
  }

  @Test
  void aCountedCameraThatIsMerelyLateFromNowOnHasNotChangedItsRate() {
    ArrivalClock clock = ArrivalClock.live(25, 0, true);
    for (int n = 0; n < 200; n++) {
      double truth = 0.04 * n;
      clock.midExposureNanos(frame(n, n < 100 ? truth : truth + 0.09 + 0.002 * (n % 3)));
    }
    assertEquals(0, clock.rateChanges());
    assertFalse(clock.isInDoubt());
  }

  @Test
  void recordedTimesPassThroughLessTheLatency() {
    ArrivalClock clock = ArrivalClock.recorded(9, 0.1);
    assertEquals(900_000_000, clock.midExposureNanos(frame(0, 1.0)));
    assertEquals(1_300_000_000, clock.midExposureNanos(frame(1, 1.4)));
    Frame afterGap = frame(4, 1.5);
    assertEquals(1_400_000_000, clock.midExposureNanos(afterGap));
    assertTrue(afterGap.marks().contains(FrameMark.AFTER_GAP));
    assertEquals(2, clock.framesMissing());
  }

  @Test
  void aRepeatedFrameHasTheTimeOfTheFirst() {
    ArrivalClock clock = ArrivalClock.live(25, 0, true);
    long first = clock.midExposureNanos(frame(0, 0));
    assertEquals(first, clock.midExposureNanos(frame(0, 0.04)));
    assertEquals(first + 40_000_000, clock.midExposureNanos(frame(1, 0.08)), 2);
  }

  /** The time of a frame must not depend on what comes later, nor on anything but the frames. */
  @Property(tries = 60, seed = "41")
  void theSameFramesGiveTheSameTimesToTheNanosecond(
      @ForAll long seed, @ForAll boolean counted, @ForAll @IntRange(min = 1, max = 400) int cut) {
    Random random = new Random(seed);
    List<Sighting> frames =
        stream(400, n -> 0.02 * random.nextDouble() + (random.nextInt(40) == 0 ? 0.3 : 0));
    ArrivalClock whole = ArrivalClock.live(25, LATENCY, counted);
    ArrivalClock part = ArrivalClock.live(25, LATENCY, counted);
    List<Long> times = new ArrayList<>();
    frames.forEach(sighting -> times.add(whole.midExposureNanos(sighting.frame())));
    for (int n = 0; n < cut; n++) {
      assertEquals(times.get(n), part.midExposureNanos(frames.get(n).frame()));
    }
  }

  private static double hiccup(Random random) {
    return random.nextInt(20) == 0 ? 0.2 * random.nextDouble() : 0;
  }

  /** Frames of a 25 Hz camera whose clock is 10 ppm slow. */
  private static List<Sighting> stream(int count, IntToDoubleFunction delay) {
    List<Sighting> frames = new ArrayList<>();
    double last = Double.NEGATIVE_INFINITY;
    for (int n = 0; n < count; n++) {
      double truth = 3 + 0.0400004 * n;
      last = Math.max(last, truth + delay.applyAsDouble(n));
      frames.add(new Sighting(n, last, truth));
    }
    return frames;
  }

  private static Frame frame(long number, double arrivalSeconds) {
    Frame frame = new Frame(new CountSamples(1, 1));
    frame.begin(number, Math.round(arrivalSeconds * 1e9));
    return frame;
  }

  private record Sighting(long number, double arrival, double truth) {
    Frame frame() {
      return ArrivalClockTest.frame(number, arrival);
    }
  }
}

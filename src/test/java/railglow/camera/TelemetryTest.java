package railglow.camera;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class TelemetryTest {
  private static final long MILLI = 1_000_000;

  @Property(tries = 200, seed = "41")
  void fieldsReadAsUnsignedNumbersInEitherOrder(
      @ForAll @Size(12) byte[] frame, @ForAll @IntRange(max = 2) int log, @ForAll boolean big) {
    int size = 1 << log;
    byte[] number = new byte[size];
    for (int i = 0; i < size; i++) {
      number[big ? i : size - 1 - i] = frame[3 + i];
    }
    TelemetryField field = new TelemetryField(2, size, big ? Endian.BIG : Endian.LITTLE);
    assertEquals(new BigInteger(1, number).longValue(), field.read(frame, 1));
  }

  @Test
  void aCounterMayRunOver() {
    TelemetryField oneByte = new TelemetryField(0, 1, Endian.LITTLE);
    assertEquals(3, oneByte.step(254, 1));
    assertEquals(-2, oneByte.step(3, 1));
    assertEquals(1, new TelemetryField(0, 4, Endian.LITTLE).step(0xFFFFFFFFL, 0));
    assertThrows(IllegalArgumentException.class, () -> new TelemetryField(0, 3, Endian.BIG));
  }

  @Test
  void numbersFollowTheCounterAcrossGapsAndOverflow() {
    FrameNumbering numbering = new FrameNumbering(counter(1), 0.04);
    assertEquals(FrameNumbering.Verdict.IN_STEP, numbering.next(new byte[] {(byte) 250}, 0, 0));
    assertEquals(0, numbering.number());
    numbering.next(new byte[] {(byte) 255}, 0, 200 * MILLI);
    assertEquals(5, numbering.number());
    numbering.next(new byte[] {1}, 0, 280 * MILLI);
    assertEquals(7, numbering.number());
  }

  @Test
  void aCounterThatStandsStillIsARepeatedFrame() {
    FrameNumbering numbering = new FrameNumbering(counter(1), 0.04);
    numbering.next(new byte[] {9}, 0, 0);
    assertEquals(FrameNumbering.Verdict.REPEATED, numbering.next(new byte[] {9}, 0, 40 * MILLI));
    assertEquals(0, numbering.number());
  }

  @Test
  void aCounterThatGrowsByThreePerFrameStillCountsFrames() {
    FrameNumbering numbering = new FrameNumbering(counter(3), 0.114);
    numbering.next(new byte[] {0}, 0, 0);
    numbering.next(new byte[] {3}, 0, 114 * MILLI);
    assertEquals(1, numbering.number());
    numbering.next(new byte[] {10}, 0, 342 * MILLI);
    assertEquals(3, numbering.number());
  }

  @Test
  void aRestartedCameraGoesOnByTheTimeThatPassed() {
    FrameNumbering numbering = new FrameNumbering(counter(1), 0.04);
    numbering.next(new byte[] {100}, 0, 0);
    assertEquals(FrameNumbering.Verdict.JUMPED, numbering.next(new byte[] {0}, 0, 400 * MILLI));
    assertEquals(10, numbering.number());
    assertEquals(FrameNumbering.Verdict.IN_STEP, numbering.next(new byte[] {1}, 0, 440 * MILLI));
    assertEquals(0, numbering.jumpsInSuccession());
  }

  @Test
  void withoutACounterTheCameraTimeShowsLostFrames() {
    TelemetryField time = new TelemetryField(0, 2, Endian.LITTLE);
    Telemetry telemetry =
        new Telemetry(Optional.empty(), 1, Optional.of(time), 1e-3, Optional.empty());
    FrameNumbering numbering = new FrameNumbering(telemetry, 1 / 9.0);
    long number = 0;
    // A nominal 9 Hz that is 8.77 Hz: 114 ms a frame; every tenth step is a gap of four.
    int millis = 0;
    for (int i = 0; i < 200; i++) {
      int frames = i % 10 == 9 ? 4 : 1;
      millis = (millis + frames * 114) & 0xFFFF;
      number += i == 0 ? 0 : frames;
      numbering.next(new byte[] {(byte) millis, (byte) (millis >> 8)}, 0, 0);
      assertEquals(number, numbering.number());
    }
  }

  @Test
  void theMarkerIsFoundOnlyInItsPlace() {
    FrameMarker marker = new FrameMarker(1, new byte[] {5, 6});
    assertTrue(marker.matches(new byte[] {0, 5, 6}, 0));
    assertFalse(marker.matches(new byte[] {5, 6, 0}, 0));
    assertEquals("0506 at byte 1", marker.toString());
    assertEquals(marker, new FrameMarker(1, new byte[] {5, 6}));
  }

  @Test
  void aTimeWithoutTickIsRefused() {
    TelemetryField time = new TelemetryField(0, 2, Endian.LITTLE);
    assertThrows(
        IllegalArgumentException.class,
        () -> new Telemetry(Optional.empty(), 1, Optional.of(time), Double.NaN, Optional.empty()));
  }

  private static Telemetry counter(int step) {
    TelemetryField field = new TelemetryField(0, 1, Endian.LITTLE);
    return new Telemetry(Optional.of(field), step, Optional.empty(), Double.NaN, Optional.empty());
  }
}

package railglow.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import railglow.safety.Envelope;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.time.Step;

class GuardTest {
  private static final long MS = 1_000_000L;
  private static final Envelope ENVELOPE =
      Envelope.OPEN
          .withMaxCelsius(60, "the sequence")
          .withMaxRiseKelvin(20, "the sequence")
          .withMaxFrameAgeSeconds(1, "the bench")
          .withMaxReadingAgeSeconds(0.5, "the bench");
  private final StopLatch latch = new StopLatch();
  private double celsius;
  private double rise;
  private long frameNanos;
  private String frameTrouble;
  private long readingNanos;
  private long beatNanos;
  private double backlog;
  private boolean loopExpected;
  private Guard guard;

  @BeforeEach
  void allIsWell() {
    celsius = 30;
    rise = 1;
    frameTrouble = "";
    loopExpected = true;
    guard =
        new Guard(
            ENVELOPE,
            latch,
            new Guard.Watched(
                () -> celsius,
                () -> rise,
                () -> frameNanos,
                () -> frameTrouble,
                () -> readingNanos,
                () -> backlog,
                List.of(new Heartbeat("cruncher", () -> beatNanos, 300 * MS, () -> loopExpected))));
  }

  private StopCause causeAt(long nowNanos) {
    guard.step(nowNanos);
    return latch.stop().orElseThrow().cause();
  }

  @Test
  void aQuietBenchGoesOn() {
    assertEquals(120 * MS, guard.step(100 * MS));
    assertFalse(latch.isSet());
  }

  @Test
  void aHotPixelStopsTheRunAndTheEvidenceNamesWhoseLimitItWas() {
    celsius = 60.1;
    assertEquals(StopCause.TEMPERATURE_ABOVE_LIMIT, causeAt(0));
    assertTrue(latch.stop().orElseThrow().evidence().contains("the sequence allows 60.0 degC"));
  }

  @Test
  void aLargeRiseStopsTheRun() {
    rise = 20.5;
    assertEquals(StopCause.TEMPERATURE_ABOVE_LIMIT, causeAt(0));
  }

  @Test
  void anUnknownTemperatureIsNotAHotOne() {
    celsius = Double.NaN;
    rise = Double.NaN;
    guard.step(0);
    assertFalse(latch.isSet());
  }

  @Test
  void oldFramesStopTheRun() {
    readingNanos = 1100 * MS;
    beatNanos = 1100 * MS;
    assertEquals(StopCause.FRAMES_STALE, causeAt(1100 * MS));
  }

  @Test
  void whatIsKnownOfALostCameraIsPartOfTheEvidence() {
    readingNanos = 1100 * MS;
    beatNanos = 1100 * MS;
    frameTrouble = "the camera was lost: it ended";
    assertEquals(StopCause.FRAMES_STALE, causeAt(1100 * MS));
    assertEquals(
        "no new camera frame for 1.10 s, allowed are 1.00 s: the camera was lost: it ended",
        latch.stop().orElseThrow().evidence());
  }

  @Test
  void oldReadingsStopTheRun() {
    frameNanos = 600 * MS;
    beatNanos = 600 * MS;
    assertEquals(StopCause.READINGS_STALE, causeAt(600 * MS));
  }

  @Test
  void aStalledLoopStopsTheRunUnlessItHasEnded() {
    loopExpected = false;
    guard.step(400 * MS);
    assertFalse(latch.isSet());
    loopExpected = true;
    assertEquals(StopCause.LOOP_STALLED, causeAt(400 * MS));
    assertTrue(latch.stop().orElseThrow().evidence().contains("cruncher"));
  }

  @Test
  void aDiskThatCantKeepUpStopsTheRun() {
    backlog = 0.96;
    assertEquals(StopCause.JOURNAL_FAILED, causeAt(0));
  }

  @Test
  void afterAStopTheGuardIsDone() {
    latch.set(StopCause.OPERATOR_REQUEST, 0, "test");
    assertEquals(Step.FINISHED, guard.step(0));
  }
}

package railglow.camera;

/**
 * Gives frames their numbers from what the camera writes into them: its counter, else its clock,
 * else one after the other. Not thread-safe.
 */
final class FrameNumbering {
  /** What is known of the newest frame. */
  enum Verdict {
    IN_STEP,
    /** The same counter as before: the camera sent one image twice. */
    REPEATED,
    /** The counter went back or far ahead: the camera restarted, or these are not frames. */
    JUMPED
  }

  private static final double NANOS = 1e9;
  private static final long SLACK_FRAMES = 64;
  private static final double PERIOD_WEIGHT = 0.05;
  private final Telemetry telemetry;
  private double periodSeconds;
  private boolean begun;
  private long number;
  private long lastCounter;
  private long lastTime;
  private long lastArrivalNanos;
  private int jumpsInSuccession;

  FrameNumbering(Telemetry telemetry, double nominalPeriodSeconds) {
    this.telemetry = telemetry;
    this.periodSeconds = nominalPeriodSeconds;
  }

  /** Looks at a frame's telemetry and moves on to its number. */
  Verdict next(byte[] frame, int start, long arrivalNanos) {
    long counter = telemetry.counter().map(field -> field.read(frame, start)).orElse(0L);
    long time = telemetry.time().map(field -> field.read(frame, start)).orElse(0L);
    Verdict verdict = Verdict.IN_STEP;
    if (!begun) {
      begun = true;
    } else if (telemetry.counter().isPresent()) {
      verdict = byCounter(telemetry.counter().get().step(lastCounter, counter), arrivalNanos);
    } else if (telemetry.time().isPresent()) {
      byTime(telemetry.time().get().step(lastTime, time) * telemetry.timeTickSeconds());
    } else {
      number++;
    }
    lastCounter = counter;
    lastTime = time;
    lastArrivalNanos = arrivalNanos;
    jumpsInSuccession = verdict == Verdict.JUMPED ? jumpsInSuccession + 1 : 0;
    return verdict;
  }

  /** Of the newest frame, from 0. */
  long number() {
    return number;
  }

  /** How many of the newest frames jumped, without one in step between. */
  int jumpsInSuccession() {
    return jumpsInSuccession;
  }

  private Verdict byCounter(long step, long arrivalNanos) {
    long elapsed = Math.round((arrivalNanos - lastArrivalNanos) / NANOS / periodSeconds);
    long frames = Math.round((double) step / telemetry.counterStep());
    if (step == 0) {
      return Verdict.REPEATED;
    }
    if (frames < 1 || frames > SLACK_FRAMES + 4 * elapsed) {
      number += Math.max(1, elapsed);
      return Verdict.JUMPED;
    }
    number += frames;
    return Verdict.IN_STEP;
  }

  private void byTime(double stepSeconds) {
    long frames = Math.max(1, Math.round(stepSeconds / periodSeconds));
    number += frames;
    if (frames == 1 && stepSeconds > 0) {
      periodSeconds += PERIOD_WEIGHT * (stepSeconds - periodSeconds);
    }
  }
}

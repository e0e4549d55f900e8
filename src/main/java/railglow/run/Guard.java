package railglow.run;

import java.util.List;
import java.util.Locale;
import java.util.function.DoubleSupplier;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import railglow.safety.Envelope;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.time.Step;

/**
 * Watches what the keeper can't see: heat in the picture, the age of frames and readings, the life
 * of every loop, the scribe's backlog. It latches and does nothing else: no I/O. Runs on the
 * guard's thread only.
 */
public final class Guard implements Step {
  private static final long PERIOD_NANOS = 20_000_000L;
  private static final double NANOS = 1e9;

  /**
   * What the guard looks at; each is read on the guard's thread.
   *
   * @param hottestCelsius NaN when unknown
   * @param hottestRiseKelvin NaN when unknown
   * @param lastFrameNanos arrival of the newest frame
   * @param frameTrouble what is known to be wrong with the camera, as a sentence; empty when
   *     nothing
   * @param lastReadingNanos end of the newest supply reading
   * @param backlogShare how full the scribe's queue is, 0 to 1
   */
  public record Watched(
      DoubleSupplier hottestCelsius,
      DoubleSupplier hottestRiseKelvin,
      LongSupplier lastFrameNanos,
      Supplier<String> frameTrouble,
      LongSupplier lastReadingNanos,
      DoubleSupplier backlogShare,
      List<Heartbeat> loops) {
    public Watched {
      loops = List.copyOf(loops);
    }
  }

  private final Envelope envelope;
  private final StopLatch latch;
  private final Watched watched;

  public Guard(Envelope envelope, StopLatch latch, Watched watched) {
    this.envelope = envelope;
    this.latch = latch;
    this.watched = watched;
  }

  @Override
  public long step(long nowNanos) {
    if (latch.isSet()) {
      return FINISHED;
    }
    judgeHeat(nowNanos);
    judgeAge(
        nowNanos,
        watched.lastFrameNanos().getAsLong(),
        envelope.maxFrameAgeSeconds().value(),
        StopCause.FRAMES_STALE,
        "camera frame",
        watched.frameTrouble());
    judgeAge(
        nowNanos,
        watched.lastReadingNanos().getAsLong(),
        envelope.maxReadingAgeSeconds().value(),
        StopCause.READINGS_STALE,
        "supply reading",
        () -> "");
    for (Heartbeat loop : watched.loops()) {
      long age = nowNanos - loop.lastNanos().getAsLong();
      if (loop.expected().getAsBoolean() && age > loop.maxAgeNanos()) {
        stop(
            StopCause.LOOP_STALLED,
            nowNanos,
            "the %s loop has not moved for %.0f ms, allowed are %.0f ms",
            loop.name(),
            age / 1e6,
            loop.maxAgeNanos() / 1e6);
      }
    }
    if (watched.backlogShare().getAsDouble() >= 0.95) {
      stop(
          StopCause.JOURNAL_FAILED,
          nowNanos,
          "the disk can't keep up: %.0f %% of the record's waiting room is full",
          100 * watched.backlogShare().getAsDouble());
    }
    return nowNanos + PERIOD_NANOS;
  }

  private void judgeHeat(long nowNanos) {
    double celsius = watched.hottestCelsius().getAsDouble();
    if (celsius > envelope.maxCelsius().value()) {
      stop(
          StopCause.TEMPERATURE_ABOVE_LIMIT,
          nowNanos,
          "the hottest pixel is at %.1f degC, %s allows %.1f degC",
          celsius,
          envelope.maxCelsius().origin(),
          envelope.maxCelsius().value());
    }
    double rise = watched.hottestRiseKelvin().getAsDouble();
    if (rise > envelope.maxRiseKelvin().value()) {
      stop(
          StopCause.TEMPERATURE_ABOVE_LIMIT,
          nowNanos,
          "a pixel rose by %.1f K, %s allows %.1f K",
          rise,
          envelope.maxRiseKelvin().origin(),
          envelope.maxRiseKelvin().value());
    }
  }

  private void judgeAge(
      long nowNanos,
      long lastNanos,
      double maxSeconds,
      StopCause cause,
      String what,
      Supplier<String> trouble) {
    double age = (nowNanos - lastNanos) / NANOS;
    if (age > maxSeconds) {
      String known = trouble.get();
      stop(
          cause,
          nowNanos,
          "no new %s for %.2f s, allowed are %.2f s%s",
          what,
          age,
          maxSeconds,
          known.isEmpty() ? "" : ": " + known);
    }
  }

  private void stop(StopCause cause, long nowNanos, String format, Object... values) {
    latch.set(cause, nowNanos, String.format(Locale.ROOT, format, values));
  }
}

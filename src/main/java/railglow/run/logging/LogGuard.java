package railglow.run.logging;

import java.util.ArrayList;
import java.util.List;
import railglow.run.Guard;
import railglow.run.Heartbeat;
import railglow.run.Scribe;
import railglow.run.pulsed.CameraLosses;
import railglow.run.pulsed.FrameIntake;
import railglow.time.StepRunner;

/** What the guard of a log looks at. */
record LogGuard(LogParts parts, SupplyPost supply, FrameIntake intake, CameraLosses losses) {
  private static final long LOOP_PATIENCE_NANOS = 3_000_000_000L;

  Guard over(
      LogCruncher crunching, Scribe scribe, LogConductor conductor, StepRunner conductorRunner) {
    List<Heartbeat> loops = new ArrayList<>();
    supply.heartbeat().ifPresent(loops::add);
    loops.add(new Heartbeat("cruncher", crunching::lastStepNanos, LOOP_PATIENCE_NANOS, () -> true));
    loops.add(new Heartbeat("scribe", scribe::lastStepNanos, LOOP_PATIENCE_NANOS, () -> true));
    loops.add(
        new Heartbeat(
            "conductor",
            conductor::lastStepNanos,
            LOOP_PATIENCE_NANOS,
            conductorRunner::isRunning));
    return new Guard(
        parts.envelope(),
        parts.latch(),
        new Guard.Watched(
            crunching::hottestCelsius,
            crunching::hottestRiseKelvin,
            intake.reader()::lastArrivalNanos,
            losses::trouble,
            () -> supply.lastReadingNanos(parts.clock().nanos()),
            scribe::backlogShare,
            loops));
  }
}

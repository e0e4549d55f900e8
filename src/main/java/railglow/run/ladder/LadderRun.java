package railglow.run.ladder;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import railglow.board.ladder.LadderStep;
import railglow.camera.HottestPixel;
import railglow.journal.Entry;
import railglow.journal.JournalWriter;
import railglow.observed.OutputState;
import railglow.run.Guard;
import railglow.run.Heartbeat;
import railglow.run.RunEnding;
import railglow.run.RunWatcher;
import railglow.run.Scribe;
import railglow.run.SupplyEvents;
import railglow.run.pulsed.CompanionPost;
import railglow.run.pulsed.FrameIntake;
import railglow.safety.PermitSlot;
import railglow.safety.StopCause;
import railglow.supply.SupplyKeeper;
import railglow.time.Pause;
import railglow.time.Step;
import railglow.time.StepRunner;

/**
 * One ladder from the first proof of "off" to the last, journalled from the first level on; a
 * camera guards the board where there is one. Used once, by one thread.
 */
public final class LadderRun {
  private static final Logger LOG = LoggerFactory.getLogger(LadderRun.class);
  private static final long SECOND = 1_000_000_000L;
  private static final long WATCH_NANOS = SECOND / 20;
  private static final long READY_PATIENCE_NANOS = 20 * SECOND;
  private static final long FRAMES_PATIENCE_NANOS = 5 * SECOND;
  private static final long OFF_PATIENCE_NANOS = 15 * SECOND;
  private static final long LOOP_PATIENCE_NANOS = 3 * SECOND;
  private static final int ENTRY_ROOM = 20_000;
  private static final int LEAD_IN_FRAMES = 10;
  private static final long JOURNAL_BYTES = 8L << 20;

  /**
   * What is left when it is over.
   *
   * @param departure why it ended before the last level; empty when no step departed
   * @param recordFailure why the journal is not whole; empty when it is
   */
  public record Outcome(
      RunEnding ending, List<LadderStep> steps, String departure, String recordFailure) {}

  private final LadderParts parts;
  private final SupplyEvents events;
  private final SupplyKeeper keeper;
  private final StepRunner keeperRunner;
  private final LadderStepper stepper;
  private final FrameIntake intake;
  private volatile Scribe scribe;

  /**
   * @param watcher hears readings and warnings
   */
  public LadderRun(LadderParts parts, RunWatcher watcher) {
    this.parts = parts;
    this.events = new SupplyEvents(watcher);
    PermitSlot permits = new PermitSlot();
    this.stepper =
        new LadderStepper(
            parts.plan(),
            parts.leadOhms(),
            parts.readBack(),
            permits,
            parts.latch(),
            this::wakeKeeper,
            this::record);
    this.keeper =
        new SupplyKeeper(
            parts.supply(),
            parts.outputPlan(),
            parts.envelope(),
            permits,
            parts.latch(),
            new LadderEvents(events, stepper),
            parts.clock());
    this.keeperRunner = keeper.runner(this::onFailure);
    this.intake = parts.camera().map(c -> new FrameIntake(c.source(), c.descriptor())).orElse(null);
  }

  private void wakeKeeper() {
    keeperRunner.wake();
  }

  private void record(Entry entry) {
    if (scribe != null) {
      scribe.post(entry);
    }
  }

  /** Runs to the end, whatever it is; never leaves without having tried to prove the output off. */
  public Outcome run() {
    parts.latch().onSet(keeperRunner::wake);
    keeperRunner.start();
    StepRunner reader = intake == null ? null : runner("camera-reader", intake.reader()).start();
    CompanionPost companion =
        CompanionPost.start(
            parts.companion(),
            keeper::lastStepNanos,
            parts.latch(),
            parts.clock(),
            this::onFailure);
    try {
      awaitReady(companion);
      if (!parts.latch().isSet()) {
        climb();
      }
    } catch (IOException e) {
      stop(StopCause.JOURNAL_FAILED, "the record can't be begun: " + e.getMessage());
    } catch (RuntimeException | Error e) {
      LOG.error("the ladder failed", e);
      stop(StopCause.INTERNAL_FAULT, "the ladder could not go on: " + e);
    } finally {
      keeperRunner.awaitEnd(OFF_PATIENCE_NANOS);
      keeper.sendOffUnlessProven();
      companion.end(keeper.outputState() == OutputState.PROVEN_OFF);
      keeperRunner.close();
      if (reader != null) {
        reader.close();
      }
    }
    String failure = scribe == null ? null : scribe.failure();
    return new Outcome(
        ending(), stepper.steps(), stepper.departure(), failure == null ? "" : failure);
  }

  private RunEnding ending() {
    return new RunEnding(parts.latch().stop().orElseThrow(), keeper.outputState(), keeper.doubt());
  }

  private void awaitReady(CompanionPost companion) {
    long begin = parts.clock().nanos();
    while (!parts.latch().isSet()) {
      boolean frames = intake == null || intake.runs();
      if (frames && companion.isReady() && keeper.isReady()) {
        return;
      }
      if (intake != null) {
        intake.discard();
        intake.failure().ifPresent(sentence -> stop(StopCause.FRAMES_STALE, sentence));
      }
      long waited = parts.clock().nanos() - begin;
      if (!frames && waited > FRAMES_PATIENCE_NANOS) {
        stop(StopCause.FRAMES_STALE, intake.silence());
      }
      if (waited > READY_PATIENCE_NANOS) {
        stop(StopCause.SUPPLY_ERROR, "supply and companion were not ready within 20 s");
      }
      Pause.nanos(WATCH_NANOS);
    }
  }

  private void climb() throws IOException {
    long now = parts.clock().nanos();
    try (JournalWriter journal =
        JournalWriter.create(parts.folder(), parts.header().make(now), JOURNAL_BYTES)) {
      scribe = Scribe.withoutFrames(journal, parts.latch(), ENTRY_ROOM, now);
      events.recordWith(scribe);
      record(new Entry.Note(now, parts.readBack().note()));
      StepRunner scribeRunner = runner("scribe", scribe).start();
      scribe.wakeWith(scribeRunner::wake);
      HeatWatch heat = heatWatch(now);
      StepRunner heatRunner = heat == null ? null : runner("heat-watch", heat).start();
      awaitLeadIn(heat);
      stepper.expectFrom(parts.clock().nanos());
      StepRunner stepperRunner = runner("ladder-stepper", stepper);
      StepRunner guardRunner = runner("guard", guard(heat, stepperRunner));
      stepperRunner.start();
      guardRunner.start();
      while (!parts.latch().isSet()) {
        if (intake != null) {
          intake.failure().ifPresent(s -> stop(StopCause.FRAMES_STALE, "the camera failed: " + s));
        }
        Pause.nanos(WATCH_NANOS);
      }
      keeperRunner.awaitEnd(OFF_PATIENCE_NANOS);
      stepperRunner.close();
      guardRunner.close();
      if (heatRunner != null) {
        heatRunner.close();
      }
      close(scribeRunner);
    }
  }

  private void close(StepRunner scribeRunner) {
    RunEnding ending = ending();
    scribe.post(
        new Entry.Stopped(ending.stop().nanos(), ending.stop().cause(), ending.stop().evidence()));
    scribe.close(
        scribeRunner,
        StepRunner.LAST_STEP_NANOS,
        new Entry.Closed(
            parts.clock().nanos(),
            ending.stop().cause(),
            ending.output(),
            ending.exitCode(),
            intake == null ? 0 : intake.reader().framesArrived(),
            intake == null ? 0 : intake.reader().framesDropped(),
            intake == null ? 0 : intake.reader().framesMissing()),
        parts.clock().nanos());
  }

  private HeatWatch heatWatch(long nowNanos) {
    return parts
        .camera()
        .map(
            camera ->
                new HeatWatch(
                    intake, new HottestPixel(camera.descriptor().profile()), scribe, nowNanos))
        .orElse(null);
  }

  /** Some frames without power, so that a rise has something to rise from. */
  private void awaitLeadIn(HeatWatch heat) {
    long begin = parts.clock().nanos();
    while (heat != null && heat.learnt() < LEAD_IN_FRAMES && !parts.latch().isSet()) {
      if (parts.clock().nanos() - begin > FRAMES_PATIENCE_NANOS) {
        stop(StopCause.FRAMES_STALE, intake.silence());
      }
      Pause.nanos(WATCH_NANOS);
    }
    if (heat != null) {
      heat.powered();
    }
  }

  private Guard guard(HeatWatch heat, StepRunner stepperRunner) {
    List<Heartbeat> loops = new ArrayList<>();
    loops.add(
        new Heartbeat("supply-keeper", keeper::lastStepNanos, LOOP_PATIENCE_NANOS, () -> true));
    loops.add(new Heartbeat("scribe", scribe::lastStepNanos, LOOP_PATIENCE_NANOS, () -> true));
    loops.add(
        new Heartbeat(
            "ladder-stepper",
            stepper::lastStepNanos,
            LOOP_PATIENCE_NANOS,
            stepperRunner::isRunning));
    if (heat != null) {
      loops.add(new Heartbeat("heat-watch", heat::lastStepNanos, LOOP_PATIENCE_NANOS, () -> true));
    }
    return new Guard(
        parts.envelope(),
        parts.latch(),
        new Guard.Watched(
            () -> heat == null ? Double.NaN : heat.celsius(),
            () -> heat == null ? Double.NaN : heat.riseKelvin(),
            heat == null ? parts.clock()::nanos : intake.reader()::lastArrivalNanos,
            () -> intake == null ? "" : intake.failure().orElse(""),
            keeper::lastReadingNanos,
            scribe::backlogShare,
            loops));
  }

  private void stop(StopCause cause, String evidence) {
    parts.latch().set(cause, parts.clock().nanos(), evidence);
  }

  private StepRunner runner(String name, Step step) {
    return new StepRunner(name, step, parts.clock(), this::onFailure);
  }

  private void onFailure(String name, Throwable failure) {
    LOG.error("the {} thread failed", name, failure);
    stop(StopCause.INTERNAL_FAULT, "the " + name + " thread failed: " + failure);
  }
}

package railglow.run.pulsed;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import railglow.camera.HottestPixel;
import railglow.journal.Entry;
import railglow.journal.FrameStoreWriter;
import railglow.journal.JournalWriter;
import railglow.journal.RunHeader;
import railglow.journal.SampleType;
import railglow.observed.OutputState;
import railglow.pulse.PulseSequence;
import railglow.run.Conductor;
import railglow.run.Cruncher;
import railglow.run.Guard;
import railglow.run.Heartbeat;
import railglow.run.RunEnding;
import railglow.run.RunProgress;
import railglow.run.RunWatcher;
import railglow.run.Scribe;
import railglow.run.SupplyEvents;
import railglow.run.reduction.Reduced;
import railglow.run.reduction.Reduction;
import railglow.safety.PermitSlot;
import railglow.safety.Stop;
import railglow.safety.StopCause;
import railglow.supply.SupplyKeeper;
import railglow.thermal.Samples;
import railglow.time.Pause;
import railglow.time.StepRunner;

/**
 * One pulsed run from the first proof of "off" to the last: starts the threads in order, watches
 * them, and ends them in order. Used once, by one thread.
 */
public final class PulsedRun {
  private static final Logger LOG = LoggerFactory.getLogger(PulsedRun.class);
  private static final long SECOND = 1_000_000_000L;
  private static final long WATCH_NANOS = SECOND / 10;
  private static final long START_NANOS = SECOND / 20;
  private static final long READY_PATIENCE_NANOS = 20 * SECOND;
  private static final long FRAMES_PATIENCE_NANOS = 5 * SECOND;
  private static final long OFF_PATIENCE_NANOS = 15 * SECOND;
  private static final long LOOP_PATIENCE_NANOS = 3 * SECOND;
  private static final int ENTRY_ROOM = 20_000;

  /**
   * What is left when it is over.
   *
   * @param header null when the run ended before its timeline began
   * @param reduced null likewise, or when the last look did not end in time
   */
  public record Outcome(RunEnding ending, RunHeader header, Reduced reduced) {}

  private final RunParts parts;
  private final RunWatcher watcher;
  private final PermitSlot permits = new PermitSlot();
  private final SupplyEvents supply;
  private final SupplyKeeper keeper;
  private final StepRunner keeperRunner;
  private final FrameIntake intake;
  private final StepRunner readerRunner;

  public PulsedRun(RunParts parts, RunWatcher watcher) {
    this.parts = parts;
    this.watcher = watcher;
    this.supply = new SupplyEvents(watcher, parts.contact());
    this.keeper =
        new SupplyKeeper(
            parts.supply(),
            parts.outputPlan(),
            parts.envelope(),
            permits,
            parts.latch(),
            supply,
            parts.clock());
    this.keeperRunner = keeper.runner(this::onFailure);
    this.intake = new FrameIntake(parts.source(), parts.camera());
    this.readerRunner = runner("camera-reader", intake.reader());
  }

  /** Runs to the end, whatever it is; never leaves without having tried to prove the output off. */
  public Outcome run() {
    parts.latch().onSet(keeperRunner::wake);
    keeperRunner.start();
    readerRunner.start();
    CompanionPost companion =
        CompanionPost.start(
            parts.companion(),
            keeper::lastStepNanos,
            parts.latch(),
            parts.clock(),
            this::onFailure);
    try {
      awaitReady(companion);
      return parts.latch().isSet() ? new Outcome(awaitOff(), null, null) : pulse();
    } catch (IOException e) {
      stop(StopCause.JOURNAL_FAILED, "the record can't be begun: " + e.getMessage());
      return new Outcome(awaitOff(), null, null);
    } catch (RuntimeException | Error e) {
      failed("the run could not go on: ", e);
      return new Outcome(awaitOff(), null, null);
    } finally {
      keeper.sendOffUnlessProven();
      readerRunner.close();
      companion.end(keeper.outputState() == OutputState.PROVEN_OFF);
      keeperRunner.close();
    }
  }

  private Outcome pulse() throws IOException {
    long now = parts.clock().nanos();
    long start = now + START_NANOS;
    RunHeader header = parts.header().make(start);
    Samples like = parts.source().newSamples();
    PulseSequence sequence = parts.timeline().sequence();
    try (JournalWriter journal =
            JournalWriter.create(parts.folder(), header, parts.plannedBytes());
        FrameStoreWriter store =
            FrameStoreWriter.create(
                parts.folder().frames(), SampleType.of(like), like.width(), like.height())) {
      Scribe scribe =
          new Scribe(
              journal, store, parts.latch(), intake::giveBack, ENTRY_ROOM, intake.poolSize(), now);
      supply.recordWith(scribe);
      LookKeeper looks = new LookKeeper(sequence, scribe, parts.latch(), watcher);
      Reduction reduction = new Reduction(header, like, looks);
      HottestPixel hottest = new HottestPixel(parts.camera().profile());
      long leadInEnds = start + Math.round(sequence.leadInSeconds() * SECOND);
      Cruncher cruncher =
          new Cruncher(
              intake.queue(), supply, reduction, hottest, scribe, watcher, leadInEnds, now);
      StepRunner scribeRunner = runner("scribe", scribe);
      scribe.wakeWith(scribeRunner::wake);
      StepRunner cruncherRunner = runner("cruncher", cruncher);
      intake.wakeWith(cruncherRunner::wake);
      Conductor conductor =
          new Conductor(parts.timeline(), start, permits, parts.latch(), keeperRunner::wake);
      StepRunner conductorRunner = runner("conductor", conductor);
      CameraLosses losses =
          new CameraLosses(
              parts.source(),
              intake.reader(),
              sentence -> {
                scribe.post(new Entry.Note(parts.clock().nanos(), sentence));
                watcher.onMessage(sentence);
              });
      StepRunner guardRunner =
          runner("guard", guard(cruncher, scribe, losses, conductor, conductorRunner));
      scribeRunner.start();
      cruncherRunner.start();
      guardRunner.start();
      conductorRunner.start();
      watch(start, looks, cruncher, losses);
      RunEnding ending = awaitOff();
      conductorRunner.close();
      guardRunner.close();
      readerRunner.close();
      scribe.post(
          new Entry.Stopped(
              ending.stop().nanos(), ending.stop().cause(), ending.stop().evidence()));
      Reduced reduced = cruncher.finish(cruncherRunner, StepRunner.LAST_STEP_NANOS);
      if (reduced == null) {
        watcher.onMessage("The pictures are still being worked out; replay the run to see them");
      }
      scribe.close(
          scribeRunner, StepRunner.LAST_STEP_NANOS, closing(ending), parts.clock().nanos());
      if (scribe.failure() != null) {
        watcher.onMessage("The record is not whole: " + scribe.failure());
      }
      return new Outcome(ending, header, reduced);
    }
  }

  private Entry.Closed closing(RunEnding ending) {
    return new Entry.Closed(
        parts.clock().nanos(),
        ending.stop().cause(),
        ending.output(),
        ending.exitCode(),
        intake.reader().framesArrived(),
        intake.reader().framesDropped(),
        intake.reader().framesMissing());
  }

  private Guard guard(
      Cruncher cruncher,
      Scribe scribe,
      CameraLosses losses,
      Conductor conductor,
      StepRunner conductorRunner) {
    List<Heartbeat> loops = new ArrayList<>();
    loops.add(
        new Heartbeat("supply-keeper", keeper::lastStepNanos, LOOP_PATIENCE_NANOS, () -> true));
    loops.add(new Heartbeat("cruncher", cruncher::lastStepNanos, LOOP_PATIENCE_NANOS, () -> true));
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
            cruncher::hottestCelsius,
            cruncher::hottestRiseKelvin,
            intake.reader()::lastArrivalNanos,
            losses::trouble,
            keeper::lastReadingNanos,
            scribe::backlogShare,
            loops));
  }

  private void watch(long startNanos, LookKeeper looks, Cruncher cruncher, CameraLosses losses) {
    while (!parts.latch().isSet()) {
      losses.check();
      intake
          .failure()
          .ifPresent(sentence -> stop(StopCause.FRAMES_STALE, "the camera failed: " + sentence));
      watcher.onProgress(progress(startNanos, looks, cruncher));
      Pause.nanos(WATCH_NANOS);
    }
    watcher.onProgress(progress(startNanos, looks, cruncher));
  }

  private RunProgress progress(long startNanos, LookKeeper looks, Cruncher cruncher) {
    long now = parts.clock().nanos();
    return new RunProgress(
        now,
        looks.cyclesDone(),
        parts.timeline().cycles().size(),
        (now - startNanos) / (double) SECOND,
        parts.timeline().endOffsetNanos() / (double) SECOND,
        keeper.outputState(),
        supply.latest() == null ? Double.NaN : supply.latest().volts(),
        supply.latest() == null ? Double.NaN : supply.latest().amperes(),
        cruncher.hottestCelsius(),
        cruncher.hottestRiseKelvin(),
        looks.strongest(),
        parts.camera().profile().hasKelvin() ? "K" : "counts");
  }

  /** Waits until frames come and can be stored, the companion watches and the supply is set. */
  private void awaitReady(CompanionPost companion) throws IOException {
    parts.folder().prepare(parts.plannedBytes());
    try (StoreRehearsal rehearsal =
        StoreRehearsal.begin(
            parts.folder(),
            parts.source().newSamples(),
            parts.camera().framesPerSecond(),
            parts.clock())) {
      awaitReady(companion, rehearsal);
    }
  }

  private void awaitReady(CompanionPost companion, StoreRehearsal rehearsal) throws IOException {
    long begin = parts.clock().nanos();
    while (!parts.latch().isSet()) {
      intake.discard(rehearsal);
      boolean others = intake.runs() && companion.isReady() && keeper.isReady();
      if (others && rehearsal.keepsPace()) {
        return;
      }
      intake.failure().ifPresent(sentence -> stop(StopCause.FRAMES_STALE, sentence));
      long waited = parts.clock().nanos() - begin;
      if (!intake.runs() && waited > FRAMES_PATIENCE_NANOS) {
        stop(StopCause.FRAMES_STALE, intake.silence());
      }
      if (waited > READY_PATIENCE_NANOS && others) {
        stop(StopCause.JOURNAL_FAILED, rehearsal.complaint());
      } else if (waited > READY_PATIENCE_NANOS) {
        stop(StopCause.SUPPLY_ERROR, "supply and companion were not ready within 20 s");
      }
      Pause.nanos(WATCH_NANOS / 10);
    }
  }

  /** Waits for the keeper to prove the output off; says loudly when it can't. */
  private RunEnding awaitOff() {
    keeperRunner.awaitEnd(OFF_PATIENCE_NANOS);
    Stop stop = parts.latch().stop().orElseThrow();
    RunEnding ending = new RunEnding(stop, keeper.outputState(), keeper.doubt());
    watcher.onEnded(ending);
    return ending;
  }

  private void stop(StopCause cause, String evidence) {
    parts.latch().set(cause, parts.clock().nanos(), evidence);
  }

  private StepRunner runner(String name, railglow.time.Step step) {
    return new StepRunner(name, step, parts.clock(), this::onFailure);
  }

  private void onFailure(String name, Throwable failure) {
    failed("the " + name + " thread failed: ", failure);
  }

  /** Stop first, words later: where there is no memory both fail, and the keeper must find out. */
  private void failed(String what, Throwable failure) {
    try {
      if (failure instanceof OutOfMemoryError) {
        keeper.memoryIsGone();
      }
      stop(StopCause.INTERNAL_FAULT, what + failure);
      LOG.error(what, failure);
    } catch (OutOfMemoryError e) {
      keeperRunner.wake();
    }
  }
}

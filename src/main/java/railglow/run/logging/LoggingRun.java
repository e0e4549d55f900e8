package railglow.run.logging;

import java.io.IOException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import railglow.board.places.PlacePixels;
import railglow.camera.HottestPixel;
import railglow.journal.Entry;
import railglow.journal.FrameStoreWriter;
import railglow.journal.JournalWriter;
import railglow.journal.RunHeader;
import railglow.journal.SampleType;
import railglow.observed.OutputState;
import railglow.run.Scribe;
import railglow.run.SupplyEvents;
import railglow.run.pulsed.CameraLosses;
import railglow.run.pulsed.FrameIntake;
import railglow.safety.PermitSlot;
import railglow.safety.Stop;
import railglow.safety.StopCause;
import railglow.thermal.Plane;
import railglow.thermal.Samples;
import railglow.time.Pause;
import railglow.time.Step;
import railglow.time.StepRunner;

/**
 * One log from its first reading to its last: starts the threads in order, watches them, and ends
 * them in order. Used once, by one thread; {@link #mark} may be called from any.
 */
public final class LoggingRun {
  private static final Logger LOG = LoggerFactory.getLogger(LoggingRun.class);
  private static final long SECOND = 1_000_000_000L;
  private static final long WATCH_NANOS = SECOND / 10;
  private static final long START_NANOS = SECOND / 5;
  private static final long READY_PATIENCE_NANOS = 20 * SECOND;
  private static final long FRAMES_PATIENCE_NANOS = 5 * SECOND;
  private static final int ENTRY_ROOM = 20_000;

  /**
   * What is left when it is over.
   *
   * @param header null when it ended before its record began
   * @param baseline mean image before any injection; null without one
   * @param aligned null when it ended before its record began
   */
  public record Outcome(
      LogEnding ending, RunHeader header, Plane baseline, Entry.Aligned aligned, long frames) {}

  private final LogParts parts;
  private final LogWatcher watcher;
  private final PermitSlot permits = new PermitSlot();
  private final SupplyEvents events;
  private final SupplyPost supply;
  private final FrameIntake intake;
  private final StepRunner readerRunner;
  private final ReadingSpread readings = new ReadingSpread();
  private volatile LogCruncher cruncher;

  public LoggingRun(LogParts parts, LogWatcher watcher) {
    this.parts = parts;
    this.watcher = watcher;
    this.events = new SupplyEvents(new WithSpread(watcher, readings));
    this.supply =
        parts
            .driven()
            .map(
                driven ->
                    SupplyPost.injecting(
                        new SupplyPost.Injection(
                            driven.supply(), driven.plan(), parts.envelope(), driven.companion()),
                        permits,
                        parts.latch(),
                        events,
                        parts.clock()))
            .or(
                () ->
                    parts
                        .watched()
                        .map(watched -> SupplyPost.watching(watched, events, parts.clock())))
            .orElseGet(SupplyPost::none);
    this.intake = new FrameIntake(parts.source(), parts.camera(), parts.plan().beforeSeconds());
    this.readerRunner = runner("camera-reader", intake.reader());
  }

  /** Runs to the end, whatever it is; an output of ours is driven off and proven off. */
  public Outcome run() {
    supply.start(this::onFailure);
    readerRunner.start();
    try {
      awaitReady();
      return parts.latch().isSet() ? ended() : log();
    } catch (IOException e) {
      stop(StopCause.JOURNAL_FAILED, "the record can't be begun: " + e.getMessage());
      return ended();
    } catch (RuntimeException | Error e) {
      failed("the log could not go on: ", e);
      return ended();
    } finally {
      readerRunner.close();
      supply.close();
    }
  }

  /** Sets a mark now; any thread. Before frames are recorded it is set all the same. */
  public boolean mark(String text) {
    LogCruncher to = cruncher;
    if (to == null || parts.latch().isSet()) {
      return false;
    }
    to.markByHand(parts.clock().nanos(), text);
    return true;
  }

  private Outcome ended() {
    return new Outcome(awaitOff(), null, null, null, 0);
  }

  private Outcome log() throws IOException {
    long now = parts.clock().nanos();
    long start = now + START_NANOS;
    RunHeader header = parts.header().make(start);
    Samples like = parts.source().newSamples();
    LogPlan plan = parts.plan();
    try (JournalWriter journal =
            JournalWriter.create(parts.folder(), header, parts.plannedBytes());
        FrameStoreWriter store =
            FrameStoreWriter.create(
                parts.folder().frames(), SampleType.of(like), like.width(), like.height())) {
      Scribe scribe =
          new Scribe(
              journal, store, parts.latch(), intake::giveBack, ENTRY_ROOM, intake.poolSize(), now);
      for (PlacePixels place : plan.places()) {
        scribe.post(new Entry.PlaceNamed(now, place.name(), place.runs()));
      }
      events.recordWith(scribe);
      LogConductor conductor = new LogConductor(plan, start, permits, parts.latch(), supply::wake);
      LogCruncher crunching =
          new LogCruncher(
              plan,
              intake.queue(),
              events,
              ends -> new FrameFollower(header.camera(), like, plan.places(), ends),
              new HottestPixel(parts.camera().profile()),
              scribe,
              watcher,
              new Conditions(conductor),
              intake::giveBack,
              start);
      cruncher = crunching;
      StepRunner scribeRunner = runner("scribe", scribe);
      scribe.wakeWith(scribeRunner::wake);
      StepRunner cruncherRunner = runner("cruncher", crunching);
      intake.wakeWith(cruncherRunner::wake);
      StepRunner conductorRunner = runner("conductor", conductor);
      CameraLosses losses =
          new CameraLosses(
              parts.source(),
              intake.reader(),
              sentence -> {
                scribe.post(new Entry.Note(parts.clock().nanos(), sentence));
                watcher.onMessage(sentence);
              });
      LogGuard guard = new LogGuard(parts, supply, intake, losses);
      StepRunner guardRunner =
          runner("guard", guard.over(crunching, scribe, conductor, conductorRunner));
      scribeRunner.start();
      cruncherRunner.start();
      guardRunner.start();
      conductorRunner.start();
      watch(start, crunching, losses);
      LogEnding ending = awaitOff();
      conductorRunner.close();
      guardRunner.close();
      readerRunner.close();
      FrameFollower follower = crunching.finish(cruncherRunner, StepRunner.LAST_STEP_NANOS);
      Entry.Aligned aligned =
          new Entry.Aligned(
              parts.clock().nanos(),
              readings.halfSeconds(),
              follower == null ? Double.NaN : follower.latenessSeconds());
      scribe.post(aligned);
      scribe.post(
          new Entry.Stopped(
              ending.stop().nanos(), ending.stop().cause(), ending.stop().evidence()));
      scribe.close(
          scribeRunner, StepRunner.LAST_STEP_NANOS, closing(ending), parts.clock().nanos());
      if (scribe.failure() != null) {
        watcher.onMessage("The record is not whole: " + scribe.failure());
      }
      return new Outcome(
          ending,
          header,
          follower == null ? null : follower.baseline(),
          aligned,
          crunching.framesRecorded());
    }
  }

  /** What conditions do. */
  private final class Conditions implements LogCruncher.Signals {
    private final LogConductor conductor;

    private Conditions(LogConductor conductor) {
      this.conductor = conductor;
    }

    @Override
    public void onStart(long nanos, String why) {
      conductor.begun(nanos);
      watcher.onMessage("Begun      " + why);
    }

    @Override
    public void onStop(long nanos, String why) {
      parts.latch().set(StopCause.PROGRAMME_FINISHED, nanos, "the stop condition came: " + why);
    }
  }

  private Entry.Closed closing(LogEnding ending) {
    return new Entry.Closed(
        parts.clock().nanos(),
        ending.stop().cause(),
        ending.output() == null ? OutputState.UNKNOWN : ending.output(),
        ending.exitCode(),
        intake.reader().framesArrived(),
        intake.reader().framesDropped(),
        intake.reader().framesMissing());
  }

  private void watch(long startNanos, LogCruncher crunching, CameraLosses losses) {
    while (!parts.latch().isSet()) {
      losses.check();
      intake
          .failure()
          .ifPresent(sentence -> stop(StopCause.FRAMES_STALE, "the camera failed: " + sentence));
      watcher.onLog(progress(startNanos, crunching));
      Pause.nanos(WATCH_NANOS);
    }
  }

  private LogProgress progress(long startNanos, LogCruncher crunching) {
    long now = parts.clock().nanos();
    Entry.Followed newest = crunching.newest();
    return new LogProgress(
        now,
        newest != null,
        (now - startNanos) / (double) SECOND,
        crunching.framesRecorded(),
        crunching.markers(),
        supply.output(),
        events.latest(),
        crunching.hottestCelsius(),
        crunching.hottestRiseKelvin(),
        parts.plan().places().stream().map(PlacePixels::name).toList(),
        newest == null ? new double[0] : newest.mean(),
        newest == null ? new double[0] : newest.riseMean());
  }

  /** Waits until frames come and the supply is set; discards frames. */
  private void awaitReady() {
    long begin = parts.clock().nanos();
    while (!parts.latch().isSet()) {
      intake.discard();
      if (intake.runs() && supply.isReady()) {
        return;
      }
      intake.failure().ifPresent(sentence -> stop(StopCause.FRAMES_STALE, sentence));
      long waited = parts.clock().nanos() - begin;
      if (!intake.runs() && waited > FRAMES_PATIENCE_NANOS) {
        stop(StopCause.FRAMES_STALE, intake.silence());
      }
      if (waited > READY_PATIENCE_NANOS) {
        stop(StopCause.SUPPLY_ERROR, "the supply was not ready within 20 s");
      }
      Pause.nanos(WATCH_NANOS / 10);
    }
  }

  private LogEnding awaitOff() {
    supply.awaitOff();
    Stop stop = parts.latch().stop().orElseThrow();
    return new LogEnding(stop, supply.output(), supply.doubt());
  }

  private void stop(StopCause cause, String evidence) {
    parts.latch().set(cause, parts.clock().nanos(), evidence);
  }

  private StepRunner runner(String name, Step step) {
    return new StepRunner(name, step, parts.clock(), this::onFailure);
  }

  private void onFailure(String name, Throwable failure) {
    failed("the " + name + " thread failed: ", failure);
  }

  /** Stop first, words later: where there is no memory both fail, and the keeper must find out. */
  private void failed(String what, Throwable failure) {
    try {
      stop(StopCause.INTERNAL_FAULT, what + failure);
      LOG.error(what, failure);
    } catch (OutOfMemoryError e) {
      supply.wake();
    }
  }
}

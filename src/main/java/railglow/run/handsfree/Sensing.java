package railglow.run.handsfree;

import java.util.List;
import java.util.Locale;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import railglow.observed.Edge;
import railglow.observed.OutputState;
import railglow.observed.SupplyReading;
import railglow.run.Guard;
import railglow.run.Heartbeat;
import railglow.run.RunEnding;
import railglow.safety.PermitSlot;
import railglow.safety.StopCause;
import railglow.supply.SupplyKeeper;
import railglow.supply.SupplyListener;
import railglow.time.Pause;
import railglow.time.Step;
import railglow.time.StepRunner;

/**
 * Waits with the supply at the sensing level until a probe makes a steady contact, then drives the
 * output off and proves it. The keeper sets level, current limit and protection to those of sensing
 * and reads them back before anything is permitted. Used once, by one thread.
 */
public final class Sensing {
  private static final Logger LOG = LoggerFactory.getLogger(Sensing.class);
  private static final long SECOND = 1_000_000_000L;
  private static final long WATCH_NANOS = SECOND / 50;
  private static final int WATCHES_A_NEWS = 5;
  private static final long READY_PATIENCE_NANOS = 20 * SECOND;
  private static final long OFF_PATIENCE_NANOS = 15 * SECOND;
  private static final long LOOP_PATIENCE_NANOS = 3 * SECOND;

  /**
   * How the wait ended.
   *
   * @param contact the last one felt; null when the output was never on
   * @param last the first reading told after the stop: the one that broke a limit, if one did; null
   *     when there was none
   * @param judgedWell how many readings with the output on went before it
   * @param armed whether a contact that is there when the next wait begins may begin a touch
   * @param mostAmperes the envelope's
   */
  public record Outcome(
      RunEnding ending,
      Contact contact,
      SupplyReading last,
      int judgedWell,
      boolean armed,
      double mostAmperes) {
    /** Whether a run may follow. */
    public boolean isTouched() {
      return ending.provenOff() && ending.stop().cause().kind() == StopCause.Kind.FINISHED;
    }

    /**
     * Whether all that happened is that the probe met the board with the supply's own output
     * capacitor charged to the sensing level: no current limit can hold that, and at a level that
     * harms nothing it harms nothing. The output was driven off all the same; the wait may begin
     * anew. A current above what the board may get is no such surge.
     */
    public boolean isSurge() {
      return ending.provenOff()
          && ending.stop().cause() == StopCause.CURRENT_ABOVE_LIMIT
          && last != null
          && Math.abs(last.amperes()) <= mostAmperes;
    }
  }

  private final SensingParts parts;
  private final PermitSlot permits = new PermitSlot();
  private final SupplyKeeper keeper;
  private final StepRunner keeperRunner;
  private final Feeler feeler;
  private int watches;

  public Sensing(SensingParts parts) {
    this.parts = parts;
    this.feeler = new Feeler(parts);
    this.keeper =
        new SupplyKeeper(
            parts.supply(),
            parts.plan(),
            parts.envelope(),
            permits,
            parts.latch(),
            feeler,
            parts.clock());
    this.keeperRunner =
        keeper.runner((name, late) -> LOG.error("the {} thread failed", name, late));
  }

  /** Runs to the end, whatever it is; never leaves without having tried to prove the output off. */
  public Outcome run() {
    parts.latch().onSet(keeperRunner::wake);
    keeperRunner.start();
    try {
      awaitReady();
      if (!parts.latch().isSet()) {
        feel();
      }
    } catch (RuntimeException | Error e) {
      stop(StopCause.INTERNAL_FAULT, "sensing could not go on: " + e);
      LOG.error("sensing failed", e);
    } finally {
      keeperRunner.awaitEnd(OFF_PATIENCE_NANOS);
      keeper.sendOffUnlessProven();
      keeperRunner.close();
    }
    tellNews();
    RunEnding ending =
        new RunEnding(parts.latch().stop().orElseThrow(), keeper.outputState(), keeper.doubt());
    return new Outcome(
        ending,
        feeler.last,
        feeler.afterStop,
        feeler.judgedWell,
        feeler.start.isArmed(),
        parts.envelope().maxAmperes().value());
  }

  private void awaitReady() {
    long begin = parts.clock().nanos();
    while (!parts.latch().isSet() && !keeper.isReady()) {
      if (parts.clock().nanos() - begin > READY_PATIENCE_NANOS) {
        stop(StopCause.SUPPLY_ERROR, "the supply was not ready within 20 s");
      }
      pause();
    }
  }

  private void pause() {
    if (watches++ % WATCHES_A_NEWS == 0) {
      tellNews();
    }
    Pause.nanos(WATCH_NANOS);
  }

  private void tellNews() {
    SupplyReading reading = feeler.reading;
    parts
        .news()
        .accept(
            new SensingNews(
                parts.clock().nanos(),
                keeper.outputState(),
                reading == null ? Double.NaN : reading.volts(),
                reading == null ? Double.NaN : reading.amperes()));
  }

  private void feel() {
    long now = parts.clock().nanos();
    SensingConductor conductor =
        new SensingConductor(parts.plan().highestVolts(), permits, parts.latch(), now);
    StepRunner conductorRunner = runner("sensing-conductor", conductor);
    StepRunner guardRunner = runner("guard", guard(conductor));
    conductorRunner.start();
    keeperRunner.wake();
    guardRunner.start();
    while (!parts.latch().isSet()) {
      pause();
    }
    conductorRunner.close();
    guardRunner.close();
  }

  /** There is no picture to be watched and nothing is recorded; all else is as in a run. */
  private Guard guard(SensingConductor conductor) {
    return new Guard(
        parts.envelope(),
        parts.latch(),
        new Guard.Watched(
            () -> Double.NaN,
            () -> Double.NaN,
            parts.clock()::nanos,
            () -> "",
            keeper::lastReadingNanos,
            () -> 0,
            List.of(
                new Heartbeat(
                    "supply-keeper", keeper::lastStepNanos, LOOP_PATIENCE_NANOS, () -> true),
                new Heartbeat(
                    "sensing-conductor",
                    conductor::lastStepNanos,
                    LOOP_PATIENCE_NANOS,
                    () -> true))));
  }

  private void stop(StopCause cause, String evidence) {
    parts.latch().set(cause, parts.clock().nanos(), evidence);
  }

  private StepRunner runner(String name, Step step) {
    return new StepRunner(
        name,
        step,
        parts.clock(),
        (thread, failure) -> {
          LOG.error("the {} thread failed", thread, failure);
          stop(StopCause.INTERNAL_FAULT, "the " + thread + " thread failed: " + failure);
        });
  }

  /** Listens to the keeper, on its thread. */
  private static final class Feeler implements SupplyListener {
    private final SensingParts parts;
    private final ContactSense sense;
    private final TouchStart start;
    private boolean on;
    private volatile Contact last;
    private volatile SupplyReading reading;
    private SupplyReading afterStop;
    private int judgedWell;

    Feeler(SensingParts parts) {
      this.parts = parts;
      this.sense = new ContactSense(parts.bounds());
      this.start = new TouchStart(parts.armed());
    }

    @Override
    public void onReading(SupplyReading reading) {
      this.reading = reading;
      if (!parts.latch().isSet()) {
        judgedWell += on ? 1 : 0;
      } else if (afterStop == null) {
        afterStop = reading;
      }
      boolean measured = Double.isFinite(reading.volts()) && Double.isFinite(reading.amperes());
      if (!on || !reading.outputOn() || !measured || parts.latch().isSet()) {
        return;
      }
      Contact contact = sense.take(reading.endNanos(), reading.volts(), reading.amperes());
      last = contact;
      start.take(contact).ifPresent(event -> happened(event, contact));
    }

    private void happened(TouchStart.Event event, Contact contact) {
      parts.told().accept(event, contact);
      if (event == TouchStart.Event.STEADY) {
        parts
            .latch()
            .set(
                StopCause.PROGRAMME_FINISHED,
                contact.nanos(),
                String.format(Locale.ROOT, "steady contact, %.3g ohm", contact.ohms()));
      }
    }

    @Override
    public void onEdge(Edge edge) {}

    @Override
    public void onOutputState(OutputState state, long nowNanos) {
      on = state == OutputState.ON;
    }

    @Override
    public void onWarning(String sentence, long nowNanos) {
      parts.warned().accept(sentence);
    }
  }
}

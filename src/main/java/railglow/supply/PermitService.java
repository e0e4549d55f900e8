package railglow.supply;

import java.util.Optional;
import railglow.observed.Edge;
import railglow.observed.OutputState;
import railglow.observed.SupplyReading;
import railglow.safety.Envelope;
import railglow.safety.OutputPermit;
import railglow.safety.PermitSlot;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.time.MonotonicClock;

/**
 * The keeper's work between the start order and the stop: it applies the current permit, reads and
 * judges. After every single exchange it looks at the latch and at the permit's end, and gives up
 * at once when either says so; the keeper's next exchange is then off.
 */
class PermitService {
  /** How long a change may take to settle before regulation and residual current are judged. */
  private static final long SETTLE_NANOS = 150_000_000;

  /** The interval is the longest: a tenth of it is left for a thread that wakes late. */
  private static final int EARLY_SHARE = 10;

  private final Supply supply;
  private final OutputPlan plan;
  private final PermitSlot permits;
  private final StopLatch latch;
  private final KeeperReports reports;
  private final MonotonicClock clock;
  private final ReadingJudge judge;
  private final OffProof offProof;
  private final boolean tellsRegulation;
  private final EnergyCount energy = new EnergyCount();
  private final ReadingDraft draft = new ReadingDraft();
  private Commanded commanded;
  private final RegulationMemory regulation = new RegulationMemory();
  private double setVolts = Double.NaN;
  private boolean errorsDue;
  private long nextReadingNanos;
  private long nextFeedNanos;
  private volatile long lastReadingNanos;
  private volatile double joules;

  PermitService(
      Supply supply,
      OutputPlan plan,
      Envelope envelope,
      PermitSlot permits,
      StopLatch latch,
      KeeperReports reports,
      MonotonicClock clock) {
    ChannelAbility channel = supply.descriptor().channel(supply.channel());
    this.supply = supply;
    this.plan = plan;
    this.permits = permits;
    this.latch = latch;
    this.reports = reports;
    this.clock = clock;
    this.judge =
        plan.probed()
            ? new ProbeJudge(envelope, channel, SETTLE_NANOS)
            : new ReadingJudge(envelope, channel, SETTLE_NANOS);
    this.offProof = new OffProof(channel);
    this.tellsRegulation = supply.descriptor().tellsRegulation();
    this.lastReadingNanos = clock.nanos();
  }

  long lastReadingNanos() {
    return lastReadingNanos;
  }

  double joules() {
    return joules;
  }

  /** The level the supply is set to; NaN when not known. */
  double setVolts() {
    return setVolts;
  }

  /** The supply has been set to the plan's highest level. */
  void levelIsSet() {
    setVolts = plan.highestVolts();
  }

  /** The start order is done, and off is proven. */
  void begin(long nowNanos) {
    commanded = commanded(false, setVolts, nowNanos);
    nextReadingNanos = nowNanos;
    nextFeedNanos = nowNanos;
    lastReadingNanos = nowNanos;
    judge.rehearse(nowNanos);
  }

  /**
   * Serves the permit for a moment.
   *
   * @return when to be called next; means nothing once the latch is set
   */
  long serve(long nowNanos) throws SupplyException {
    OutputPermit wanted = permits.get();
    if (stopNow() || !applied(wanted) || !fed(nowNanos)) {
      return nowNanos;
    }
    if (nowNanos - nextReadingNanos >= 0) {
      long interval = supply.descriptor().wire().readingIntervalNanos();
      nextReadingNanos = clock.nanos() + interval - interval / EARLY_SHARE;
      if (!read()) {
        return nowNanos;
      }
    }
    if (errorsDue) {
      errorsDue = false;
      Optional<String> error = supply.nextError();
      if (error.isPresent()) {
        reports.stop(StopCause.SUPPLY_ERROR, clock.nanos(), "the supply reports " + error.get());
        return nowNanos;
      }
    }
    if (stopNow()) {
      return nowNanos;
    }
    long expires = permits.get().expiresNanos();
    return commanded.on() && expires - nextReadingNanos < 0 ? expires : nextReadingNanos;
  }

  private Commanded commanded(boolean on, double levelVolts, long sinceNanos) {
    return new Commanded(
        on,
        levelVolts,
        plan.limitAmperes(),
        sinceNanos,
        regulation.expected(),
        regulation.chargingAboveVolts(levelVolts));
  }

  /** Whether the output must go off now: a stop is latched, or the permit has lapsed. */
  boolean stopNow() {
    long now = clock.nanos();
    if (permits.get().isLapsed(now)) {
      reports.stop(
          StopCause.PERMIT_LAPSED,
          now,
          "the permit to be on was not renewed within its time; the program's conductor is late");
    }
    return latch.isSet();
  }

  /** The check after the exchange that switched on: a stop may have come during it. */
  boolean stopAfterOn() {
    return stopNow();
  }

  private boolean applied(OutputPermit wanted) throws SupplyException {
    if (wanted.on() == commanded.on() && (!wanted.on() || wanted.levelVolts() == setVolts)) {
      return true;
    }
    if (!wanted.on()) {
      return switchedOff(wanted);
    }
    if (!(wanted.levelVolts() > 0 && wanted.levelVolts() <= plan.highestVolts())) {
      reports.stop(
          StopCause.INTERNAL_FAULT,
          clock.nanos(),
          "a permit asked for "
              + wanted.levelVolts()
              + " V, but the plan goes to "
              + plan.highestVolts()
              + " V");
      return false;
    }
    return commanded.on() ? changedLevel(wanted) : levelSet(wanted) && switchedOn(wanted);
  }

  private boolean levelSet(OutputPermit wanted) throws SupplyException {
    if (wanted.levelVolts() == setVolts) {
      return true;
    }
    forgetLevel();
    supply.setVolts(wanted.levelVolts());
    setVolts = wanted.levelVolts();
    regulation.forget();
    return !stopNow();
  }

  /** Until the supply has taken a new level, or for good if that exchange fails. */
  private void forgetLevel() {
    setVolts = Double.NaN;
  }

  private boolean switchedOn(OutputPermit wanted) throws SupplyException {
    long commandedNanos = clock.nanos();
    reports.state(OutputState.UNKNOWN, "the output is being switched on", commandedNanos);
    energy.switchedOn(commandedNanos);
    regulation.beginHalf();
    commanded = commanded(true, wanted.levelVolts(), commandedNanos);
    SwitchState said = supply.switchOn();
    if (stopAfterOn()) {
      return false;
    }
    if (said == SwitchState.NOT_TOLD) {
      said = supply.readSwitch();
      if (stopNow()) {
        return false;
      }
    }
    return confirmed(wanted, said, commandedNanos);
  }

  private boolean switchedOff(OutputPermit wanted) throws SupplyException {
    long commandedNanos = clock.nanos();
    reports.state(OutputState.UNKNOWN, "the output is being switched off", commandedNanos);
    SwitchState said = supply.switchOff();
    if (stopNow()) {
      return false;
    }
    if (said == SwitchState.NOT_TOLD) {
      said = supply.readSwitch();
      if (stopNow()) {
        return false;
      }
    }
    commanded = commanded(false, setVolts, clock.nanos());
    return confirmed(wanted, said, commandedNanos);
  }

  private boolean changedLevel(OutputPermit wanted) throws SupplyException {
    long commandedNanos = clock.nanos();
    boolean ok = levelSet(wanted);
    commanded = commanded(true, wanted.levelVolts(), clock.nanos());
    return ok && confirmed(wanted, SwitchState.ON, commandedNanos);
  }

  /**
   * Reads at once, so that the edge is confirmed by what was seen and not only by what was said.
   */
  private boolean confirmed(OutputPermit wanted, SwitchState said, long commandedNanos)
      throws SupplyException {
    boolean contrary = said == (wanted.on() ? SwitchState.OFF : SwitchState.ON);
    if (contrary) {
      reports.stop(
          StopCause.OUTPUT_NOT_AS_COMMANDED,
          clock.nanos(),
          "the output was commanded "
              + (wanted.on() ? "on" : "off")
              + ", but the supply says it is "
              + (wanted.on() ? "off" : "on"));
      return false;
    }
    if (said == SwitchState.NOT_TOLD && !read()) {
      return false;
    }
    long confirmedNanos = clock.nanos();
    if (!wanted.on()) {
      energy.switchedOff(confirmedNanos);
      regulation.endHalf();
    }
    commanded = commanded(wanted.on(), commanded.levelVolts(), confirmedNanos);
    if (wanted.on()) {
      reports.state(OutputState.ON, "the output is on", confirmedNanos);
    }
    double level = wanted.on() ? wanted.levelVolts() : 0;
    reports.edge(new Edge(wanted.edgeIndex(), wanted.on(), level, commandedNanos, confirmedNanos));
    errorsDue = supply.descriptor().commands().errorQuery().isPresent();
    nextReadingNanos = confirmedNanos;
    return true;
  }

  /** Keeps the supply's own watchdog quiet; false when the output must go off now. */
  private boolean fed(long nowNanos) throws SupplyException {
    if (plan.timerSeconds().isEmpty() || nowNanos - nextFeedNanos < 0) {
      return true;
    }
    nextFeedNanos = nowNanos + Math.round(plan.timerSeconds().getAsDouble() / 4 * 1e9);
    supply.feedTimer();
    return !stopNow();
  }

  /** One reading, judged; false when the output must go off now. */
  private boolean read() throws SupplyException {
    long startNanos = clock.nanos();
    draft.clear();
    for (int part = 0; part < supply.readingExchanges(); part++) {
      supply.readPart(part, draft);
      if (stopNow()) {
        return false;
      }
    }
    long endNanos = clock.nanos();
    SupplyReading reading = draft.finish(startNanos, endNanos, tellsRegulation, commanded.on());
    lastReadingNanos = endNanos;
    if (ReadingJudge.isMeasurement(reading.watts())) {
      energy.add(reading);
      joules = energy.joules();
    }
    Optional<Breach> breach = judge.judge(reading, commanded, joules, clock.nanos());
    breach.ifPresent(b -> reports.stop(b.cause(), clock.nanos(), b.evidence()));
    reports.reading(reading);
    if (breach.isEmpty()) {
      learn(reading);
    }
    return !stopNow();
  }

  private void learn(SupplyReading reading) {
    if (!commanded.on()) {
      String doubt = offProof.doubt(draft.outputSwitch(), reading, setVolts);
      reports.state(
          doubt.isEmpty() ? OutputState.PROVEN_OFF : OutputState.UNKNOWN,
          doubt,
          reading.endNanos());
    } else if (judge.isSettled(reading, commanded)) {
      regulation.add(reading, commanded.levelVolts());
      commanded = commanded(true, commanded.levelVolts(), commanded.sinceNanos());
    }
  }
}

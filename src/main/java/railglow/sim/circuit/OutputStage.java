package railglow.sim.circuit;

/**
 * One output of the supply: its settings, its protections, and the circuit it feeds. Time comes in;
 * it never goes back.
 *
 * <p>Deterministic. Not thread-safe.
 */
public final class OutputStage {
  private final Circuit circuit;
  private final Disturbances disturbances;
  private final OutputWatch watch;
  private final boolean resumesAfterClear;
  private long nowNanos;
  private boolean on;
  private boolean reallyOn;
  private double setVolts;
  private double setAmperes;
  private Protection protection = new Protection(33, 5.5, true, 0.02);
  private boolean overVoltageTripped;
  private boolean overCurrentTripped;
  private double secondsOverCurrent;

  /**
   * @param resumesAfterClear whether clearing a trip brings an output back that was on, as some
   *     families of supplies have it
   */
  public OutputStage(
      Circuit circuit,
      Disturbances disturbances,
      OutputWatch watch,
      boolean resumesAfterClear,
      long startNanos) {
    this.circuit = circuit;
    this.resumesAfterClear = resumesAfterClear;
    this.disturbances = disturbances;
    this.watch = watch;
    nowNanos = startNanos;
  }

  public Circuit circuit() {
    return circuit;
  }

  public long nowNanos() {
    return nowNanos;
  }

  /** What the output switch is set to, as the supply itself believes. */
  public boolean isOn() {
    return on;
  }

  /** Whether current can really flow. */
  public boolean isReallyOn() {
    return reallyOn;
  }

  public double setVolts() {
    return setVolts;
  }

  public double setAmperes() {
    return setAmperes;
  }

  public Protection protection() {
    return protection;
  }

  public boolean overVoltageTripped() {
    return overVoltageTripped;
  }

  public boolean overCurrentTripped() {
    return overCurrentTripped;
  }

  public void setVolts(double volts) {
    setVolts = volts;
    circuit.disturb();
  }

  public void setAmperes(double amperes) {
    setAmperes = amperes;
    circuit.disturb();
  }

  public void setProtection(Protection newProtection) {
    protection = newProtection;
  }

  /** Switches; while a trip is latched the output stays off. */
  public void switchOutput(boolean wanted) {
    on = wanted && !overVoltageTripped && !overCurrentTripped;
    if (on || !disturbances.ignoresOff(nowNanos)) {
      connect(on);
    }
  }

  private void connect(boolean wanted) {
    if (wanted != reallyOn) {
      reallyOn = wanted;
      secondsOverCurrent = 0;
      circuit.disturb();
      watch.onOutput(nowNanos, wanted, setVolts);
    }
  }

  public void clearTrips() {
    overVoltageTripped = false;
    overCurrentTripped = false;
    if (on) {
      connect(true);
    }
  }

  /** Trips now as if the protection had acted. */
  public void trip(boolean overVoltage) {
    overVoltageTripped |= overVoltage;
    overCurrentTripped |= !overVoltage;
    on &= resumesAfterClear;
    connect(false);
    watch.onTrip(nowNanos, overVoltage);
  }

  /** Lets time pass until then. */
  public void advanceTo(long thenNanos) {
    while (nowNanos < thenNanos) {
      double left = (thenNanos - nowNanos) * 1e-9;
      disturbances.apply(nowNanos, this);
      double stepped = circuit.step(left, drive());
      nowNanos = stepped >= left ? thenNanos : Math.min(thenNanos, nowNanos + nanos(stepped));
      watch.onStep(nowNanos, circuit);
      judge(stepped);
    }
  }

  private static long nanos(double seconds) {
    return Math.max(1, Math.round(seconds * 1e9));
  }

  private Drive drive() {
    double volts = setVolts + disturbances.voltsAdded(nowNanos);
    double limit = disturbances.limitAmperes(nowNanos, this);
    double stray = reallyOn ? 0 : disturbances.strayAmperes(nowNanos);
    return new Drive(reallyOn, volts, limit, stray, disturbances.dischargeSiemens(nowNanos));
  }

  private void judge(double seconds) {
    if (!reallyOn) {
      return;
    }
    if (circuit.senseVolts() > protection.overVolts()) {
      trip(true);
      return;
    }
    boolean over =
        protection.overCurrentEnabled() && circuit.outputAmperes() > protection.overAmperes();
    secondsOverCurrent = over ? secondsOverCurrent + seconds : 0;
    if (secondsOverCurrent > protection.delaySeconds()) {
      trip(false);
    }
  }
}

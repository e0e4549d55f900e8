package railglow.run.handsfree;

import java.util.Locale;
import railglow.journal.Entry;
import railglow.observed.Regulation;
import railglow.observed.SupplyReading;
import railglow.run.RunProgress;
import railglow.run.RunWatcher;
import railglow.run.reduction.SwungCycles;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;

/**
 * Watches the contact while a run pulses, and ends the run as soon as the probe has left the board:
 * an open probe at the full level would give the board a surge when it meets it again. It also ends
 * one whose probe slips cycle after cycle. It can stop and do nothing else. Readings come on the
 * keeper's thread; what it publishes may be read by any.
 */
public final class ContactWatch implements RunWatcher {
  /** After the output was last seen off; sooner than regulation is judged. */
  private static final long SETTLE_NANOS = 120_000_000L;

  /** Readings without current in a half in which nothing has flowed yet. */
  private static final int NEVER_FLOWED = 2;

  /** A probe that slips so often gives nothing but heat. */
  private static final int MOST_SWUNG_IN_A_ROW = 3;

  private final ContactBounds bounds;
  private final StopLatch latch;
  private long lastOffNanos = Long.MIN_VALUE;
  private boolean flowed;
  private int open;
  private Regulation lastRegulation = Regulation.NOT_REPORTED;

  /**
   * The newest; counts once it is known not to be one across the lift, which reads between both.
   */
  private SupplyReading newest;

  private int flowing;
  private double sumVolts;
  private double sumAmperes;
  private volatile double meanVolts = Double.NaN;
  private volatile double meanAmperes = Double.NaN;
  private volatile double lowestOhms = Double.NaN;
  private volatile double highestOhms = Double.NaN;
  private volatile boolean lost;
  private volatile boolean unsteady;
  private int swungInARow;

  public ContactWatch(ContactBounds bounds, StopLatch latch) {
    this.bounds = bounds;
    this.latch = latch;
  }

  @Override
  public void onReading(SupplyReading reading) {
    if (!reading.outputOn()) {
      rememberNewest();
      lastOffNanos = reading.endNanos();
      flowed = false;
      open = 0;
      return;
    }
    boolean measured = Double.isFinite(reading.volts()) && Double.isFinite(reading.amperes());
    if (!measured
        || lastOffNanos == Long.MIN_VALUE
        || reading.startNanos() - lastOffNanos < SETTLE_NANOS) {
      return;
    }
    if (bounds.flows(reading.amperes())) {
      flowed = true;
      open = 0;
      lastRegulation = reading.regulation();
      rememberNewest();
      newest = reading;
      return;
    }
    newest = flowing > 0 ? null : newest;
    rememberNewest();
    open++;
    if (flowed || open >= NEVER_FLOWED || lastRegulation == Regulation.CONSTANT_CURRENT) {
      lift(reading);
    }
  }

  private void rememberNewest() {
    if (newest != null) {
      remember(newest);
      newest = null;
    }
  }

  private void remember(SupplyReading reading) {
    double ohms = bounds.ohms(reading.volts(), reading.amperes());
    flowing++;
    sumVolts += reading.volts() - reading.amperes() * bounds.leadOhms();
    sumAmperes += reading.amperes();
    meanVolts = sumVolts / flowing;
    meanAmperes = sumAmperes / flowing;
    lowestOhms = Double.isNaN(lowestOhms) ? ohms : Math.min(lowestOhms, ohms);
    highestOhms = Double.isNaN(highestOhms) ? ohms : Math.max(highestOhms, ohms);
  }

  private void lift(SupplyReading reading) {
    String before = Double.isNaN(lowestOhms) ? "no current has flowed" : "the contact is lost";
    lost |=
        latch.set(
            StopCause.OPERATOR_REQUEST,
            reading.endNanos(),
            String.format(
                Locale.ROOT,
                "%s: %.2f mA at %.3f V with the output on",
                before,
                1e3 * reading.amperes(),
                reading.volts()));
  }

  @Override
  public void onCycle(Entry.Cycle cycle) {
    boolean swung = !cycle.accepted() && cycle.reason().startsWith(SwungCycles.CONTACT);
    swungInARow = swung ? swungInARow + 1 : 0;
    if (swungInARow == MOST_SWUNG_IN_A_ROW) {
      unsteady |=
          latch.set(
              StopCause.OPERATOR_REQUEST,
              cycle.nanos(),
              cycle.reason()
                  + ", and so it was in "
                  + MOST_SWUNG_IN_A_ROW
                  + " cycles in a row; press harder, clean the pad, or rest the hand");
    }
  }

  @Override
  public void onProgress(RunProgress progress) {}

  @Override
  public void onMessage(String sentence) {}

  /** Whether this watch has ended the run because the probe was not held still. */
  public boolean contactUnsteady() {
    return unsteady;
  }

  /** Whether this watch has ended the run because the probe has left. */
  public boolean contactLost() {
    return lost;
  }

  /** Mean over the ON halves while current flowed, leads taken off; NaN when none did. */
  public double meanVolts() {
    return meanVolts;
  }

  /** Likewise. */
  public double meanAmperes() {
    return meanAmperes;
  }

  /** Least resistance seen in the ON halves, leads taken off; NaN when nothing flowed. */
  public double lowestOhms() {
    return lowestOhms;
  }

  /** Likewise the most. */
  public double highestOhms() {
    return highestOhms;
  }
}

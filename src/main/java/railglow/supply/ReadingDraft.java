package railglow.supply;

import java.util.EnumSet;
import railglow.observed.Regulation;
import railglow.observed.SupplyReading;
import railglow.observed.Trip;

/** A reading while its parts come in. Reused; owned by the keeper's thread. */
public final class ReadingDraft {
  private final EnumSet<Trip> trips = EnumSet.noneOf(Trip.class);
  private final EnumSet<StatusMeaning> said = EnumSet.noneOf(StatusMeaning.class);
  private double volts;
  private double amperes;
  private SwitchState outputSwitch;

  /** Forgets everything. */
  public void clear() {
    trips.clear();
    said.clear();
    volts = Double.NaN;
    amperes = Double.NaN;
    outputSwitch = SwitchState.NOT_TOLD;
  }

  public void volts(double value) {
    volts = value;
  }

  public void amperes(double value) {
    amperes = value;
  }

  public void outputSwitch(SwitchState state) {
    outputSwitch = state;
  }

  public SwitchState outputSwitch() {
    return outputSwitch;
  }

  public void status(StatusMeaning meaning) {
    said.add(meaning);
    meaning.trip().ifPresent(trips::add);
  }

  /**
   * The whole reading.
   *
   * @param tellsRegulation whether this supply's status tells its regulation at all
   * @param commandedOn taken for the switch where the supply can't be asked
   */
  public SupplyReading finish(
      long startNanos, long endNanos, boolean tellsRegulation, boolean commandedOn) {
    boolean on =
        outputSwitch == SwitchState.NOT_TOLD ? commandedOn : outputSwitch == SwitchState.ON;
    return new SupplyReading(
        startNanos, endNanos, volts, amperes, on, regulation(tellsRegulation, on), trips);
  }

  private Regulation regulation(boolean tellsRegulation, boolean on) {
    if (!tellsRegulation) {
      return Regulation.NOT_REPORTED;
    }
    boolean constantVolts = said.contains(StatusMeaning.CONSTANT_VOLTAGE);
    boolean constantAmperes = said.contains(StatusMeaning.CONSTANT_CURRENT);
    if (said.contains(StatusMeaning.UNREGULATED) || constantVolts && constantAmperes) {
      return Regulation.UNREGULATED;
    }
    if (constantVolts) {
      return Regulation.CONSTANT_VOLTAGE;
    }
    if (constantAmperes) {
      return Regulation.CONSTANT_CURRENT;
    }
    return on ? Regulation.UNREGULATED : Regulation.NONE;
  }
}

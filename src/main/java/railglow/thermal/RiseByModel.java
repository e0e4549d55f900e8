package railglow.thermal;

import railglow.units.Interval;

/**
 * A settled rise as one model of how heat goes on after a pulse has it. Two runs of one place have
 * the model's error in common. Immutable.
 *
 * @param model which one
 * @param kelvin the rise
 * @param interval95 of noise alone, as if the model were the truth
 */
public record RiseByModel(Model model, double kelvin, Interval interval95) {
  /** How heat goes on. */
  public enum Model {
    /** A body of first order. */
    ONE_BODY,
    /** Heat that spreads in a sheet, see {@link SheetResponse}. */
    SHEET
  }
}

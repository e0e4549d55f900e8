package railglow.safety;

import railglow.units.Quantity;
import railglow.units.Unit;

/**
 * Why a sequence may not run: one value beyond one limit, found before anything is opened.
 *
 * @param what the value that is beyond, for example {@code "injected voltage"}
 * @param asked the value, in the unit
 * @param allowed the limit, in the unit
 * @param tooLow whether the value is below a lower limit; else it is above an upper one
 * @param origin who sets the limit
 * @param advice what the operator can do
 */
public record Refusal(
    String what,
    double asked,
    double allowed,
    Unit unit,
    boolean tooLow,
    String origin,
    String advice) {
  /** A value above an upper limit. */
  public Refusal(
      String what, double asked, double allowed, Unit unit, String origin, String advice) {
    this(what, asked, allowed, unit, false, origin, advice);
  }

  public static Refusal below(
      String what, double asked, double low, Unit unit, String origin, String advice) {
    return new Refusal(what, asked, low, unit, true, origin, advice);
  }

  /** One sentence for the operator. */
  public String sentence() {
    return what
        + " would be "
        + Quantity.format(asked, unit)
        + ", but "
        + origin
        + (tooLow ? " needs at least " : " allows at most ")
        + Quantity.format(allowed, unit)
        + "; "
        + advice;
  }
}

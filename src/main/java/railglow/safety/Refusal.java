package railglow.safety;

import railglow.units.Quantity;
import railglow.units.Unit;

/**
 * Why a sequence may not run: one value beyond one limit, found before anything is opened.
 *
 * @param what the value that is too large, for example {@code "injected voltage"}
 * @param origin who sets the limit
 * @param advice what the operator can do
 */
public record Refusal(
    String what, double asked, double allowed, Unit unit, String origin, String advice) {
  /** One sentence for the operator. */
  public String sentence() {
    return what
        + " would be "
        + Quantity.format(asked, unit)
        + ", but "
        + origin
        + " allows at most "
        + Quantity.format(allowed, unit)
        + "; "
        + advice;
  }
}

package railglow.supply;

import java.util.OptionalDouble;
import railglow.units.Quantity;
import railglow.units.Unit;

/** Whether a setting reads back as it was told. Pure. */
final class SettingReadBack {
  private static final double SHARE = 1e-3;

  private SettingReadBack() {}

  /**
   * Nothing when it agrees within a step or a thousandth, or can't be asked.
   *
   * @param told what was sent, in the unit
   * @param said what came back; empty when it can't be asked
   * @throws SupplyException of the kind {@code REFUSED} with both values
   */
  static void require(String what, double told, OptionalDouble said, double step, Unit unit)
      throws SupplyException {
    double allowed = Math.max(step, SHARE * Math.abs(told)) * (1 + 1e-9);
    if (said.isPresent() && !(Math.abs(said.getAsDouble() - told) <= allowed)) {
      throw new SupplyException(
          SupplyException.Kind.REFUSED,
          "the supply was told a "
              + what
              + " of "
              + Quantity.format(told, unit)
              + " but says it is set to "
              + Quantity.format(said.getAsDouble(), unit));
    }
  }
}

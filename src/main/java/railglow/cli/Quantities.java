package railglow.cli;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import railglow.units.Quantity;
import railglow.units.QuantityException;
import railglow.units.Unit;

/** Reads options that are quantities with their unit, such as {@code --level "1.5 V"}. */
final class Quantities {
  private Quantities() {}

  private abstract static class OfUnit implements ITypeConverter<Double> {
    private final Unit unit;

    OfUnit(Unit unit) {
      this.unit = unit;
    }

    @Override
    public Double convert(String text) {
      try {
        return Quantity.parse(text, unit);
      } catch (QuantityException e) {
        throw new TypeConversionException(e.getMessage());
      }
    }
  }

  static final class Volts extends OfUnit {
    Volts() {
      super(Unit.VOLT);
    }
  }

  static final class Amperes extends OfUnit {
    Amperes() {
      super(Unit.AMPERE);
    }
  }

  static final class Watts extends OfUnit {
    Watts() {
      super(Unit.WATT);
    }
  }

  static final class Seconds extends OfUnit {
    Seconds() {
      super(Unit.SECOND);
    }
  }

  static final class Hertz extends OfUnit {
    Hertz() {
      super(Unit.HERTZ);
    }
  }

  static final class Kelvin extends OfUnit {
    Kelvin() {
      super(Unit.KELVIN);
    }
  }

  static final class Celsius extends OfUnit {
    Celsius() {
      super(Unit.CELSIUS);
    }
  }

  static final class Ohms extends OfUnit {
    Ohms() {
      super(Unit.OHM);
    }
  }
}

package railglow.cli;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import railglow.units.Quantity;
import railglow.units.QuantityException;
import railglow.units.Unit;

/** Reads options that are quantities with their unit, such as {@code --level "1.5 V"}. */
final class Quantities {
  private Quantities() {}

  private static double parse(String text, Unit unit) {
    try {
      return Quantity.parse(text, unit);
    } catch (QuantityException e) {
      throw new TypeConversionException(e.getMessage());
    }
  }

  static final class Volts implements ITypeConverter<Double> {
    @Override
    public Double convert(String text) {
      return parse(text, Unit.VOLT);
    }
  }

  static final class Amperes implements ITypeConverter<Double> {
    @Override
    public Double convert(String text) {
      return parse(text, Unit.AMPERE);
    }
  }

  static final class Watts implements ITypeConverter<Double> {
    @Override
    public Double convert(String text) {
      return parse(text, Unit.WATT);
    }
  }

  static final class Seconds implements ITypeConverter<Double> {
    @Override
    public Double convert(String text) {
      return parse(text, Unit.SECOND);
    }
  }

  static final class Hertz implements ITypeConverter<Double> {
    @Override
    public Double convert(String text) {
      return parse(text, Unit.HERTZ);
    }
  }

  static final class Kelvin implements ITypeConverter<Double> {
    @Override
    public Double convert(String text) {
      return parse(text, Unit.KELVIN);
    }
  }

  static final class Ohms implements ITypeConverter<Double> {
    @Override
    public Double convert(String text) {
      return parse(text, Unit.OHM);
    }
  }
}

package railglow.board.imports;

import java.util.Locale;
import java.util.Optional;

/** The units placement files are written in. */
public enum LengthUnit {
  MILLIMETRE(1.0),
  INCH(25.4),
  /** A thousandth of an inch. */
  MIL(0.0254);

  private final double millimetres;

  LengthUnit(double millimetres) {
    this.millimetres = millimetres;
  }

  public double toMillimetres(double value) {
    return value * millimetres;
  }

  /** The unit a word stands for; empty when it stands for none. */
  public static Optional<LengthUnit> named(String word) {
    return switch (word.strip().toLowerCase(Locale.ROOT)) {
      case "mm", "millimetre", "millimetres", "millimeter", "millimeters", "metric" ->
          Optional.of(MILLIMETRE);
      case "in", "inch", "inches", "\"" -> Optional.of(INCH);
      case "mil", "mils", "thou" -> Optional.of(MIL);
      default -> Optional.empty();
    };
  }
}

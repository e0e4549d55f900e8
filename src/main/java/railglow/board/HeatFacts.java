package railglow.board;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import railglow.thermal.HeatShape;
import railglow.thermal.HeatSource;

/**
 * What a run knows about the heat of all its sources. Immutable.
 *
 * @param watts at the board in the ON halves; NaN when not measured or the rises are no kelvin
 * @param startCelsius apparent temperature of each source's place before warming, in the sources'
 *     order; NaN where the camera has no absolute scale; empty when the rises are no kelvin
 * @param shapes how long and wide their heat is, in the same order; empty when not measured
 */
public record HeatFacts(double watts, List<Double> startCelsius, List<HeatShape> shapes) {
  public static final HeatFacts NONE = new HeatFacts(Double.NaN, List.of(), List.of());

  /** Later than this many times the earliest, and by the seconds below: it was merely warmed. */
  private static final double LATE_FACTOR = 2;

  private static final double LATE_SECONDS = 0.5;

  public HeatFacts {
    startCelsius = List.copyOf(startCelsius);
    shapes = List.copyOf(shapes);
  }

  /**
   * One source among the others.
   *
   * @param late whether its heat comes clearly later than that of the first
   * @param words clauses for a suspect's sentence, each with its semicolon; may be empty
   */
  record Place(boolean late, String words) {}

  /** In the sources' order. */
  List<Place> places(Board board, List<HeatSource> sources) {
    double first = Double.POSITIVE_INFINITY;
    for (HeatSource source : sources) {
      first = Math.min(first, source.timeConstantSeconds());
    }
    List<Place> places = new ArrayList<>();
    for (int i = 0; i < sources.size(); i++) {
      double after = sources.get(i).timeConstantSeconds();
      boolean late = after > LATE_FACTOR * first && after > first + LATE_SECONDS;
      places.add(
          new Place(
              late,
              perWatt(sources.get(i))
                  + (sources.size() < 2 ? "" : order(after, first, late))
                  + trueSwing(board, sources.get(i), i)));
    }
    return places;
  }

  private String perWatt(HeatSource source) {
    return watts > 0
        ? String.format(Locale.ROOT, "; swings by %s K/W", digits(source.swingKelvin() / watts))
        : "";
  }

  private static String order(double after, double first, boolean late) {
    if (late) {
      return String.format(
          Locale.ROOT,
          "; its heat comes after %.1f s, where the first comes after %.1f s: it may only be warmed",
          after,
          first);
    }
    return after <= first
        ? String.format(Locale.ROOT, "; its heat comes first, after %.1f s", after)
        : String.format(Locale.ROOT, "; its heat comes with the first, after %.1f s", after);
  }

  /** Where the surface shows clearly less than all of its swing. */
  private String trueSwing(Board board, HeatSource source, int index) {
    if (index >= startCelsius.size()) {
      return "";
    }
    return SurfaceWords.trueSwingClause(
        board, source, SurfaceWords.startOr(board, startCelsius.get(index)));
  }

  private static String digits(double value) {
    return String.format(Locale.ROOT, value >= 10 ? "%.0f" : value >= 1 ? "%.1f" : "%.2f", value);
  }
}

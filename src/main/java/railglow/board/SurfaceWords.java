package railglow.board;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import railglow.board.BoardSurfaces.Named;
import railglow.thermal.HeatSource;
import railglow.thermal.Plane;
import railglow.thermal.radiometry.PlanckBand;
import railglow.thermal.radiometry.Surface;
import railglow.thermal.radiometry.Surface.Estimate;
import railglow.units.Interval;
import railglow.units.Quantity;
import railglow.units.Unit;

/** What the surface at a heat source does to the rise that is seen. Pure. */
public final class SurfaceWords {
  private SurfaceWords() {}

  /**
   * The board with the reflected temperature read off its reflector, or as it is without one; where
   * the reflector can't be read the stated temperature stays and says why.
   *
   * @param background before the first pulse, apparent temperatures in degC
   */
  public static Board withReflectedMeasured(Board board, Plane background) {
    return ReflectedTemperature.measured(board, background);
  }

  /**
   * Looks whether the board's reflector can be read in pictures of this size.
   *
   * @throws IllegalArgumentException with one sentence when it is not in the picture or too small
   */
  public static void checkReflector(Board board, int width, int height) {
    board
        .care()
        .surfaces()
        .reflector()
        .ifPresent(place -> ReflectedTemperature.pixels(place, board, width, height));
  }

  /** A clause for a suspect's sentence where bare metal hides most of the rise; else empty. */
  static String caution(Board board, double xMillimetres, double yMillimetres) {
    Named named = board.care().surfaces().at(board, xMillimetres, yMillimetres);
    return named.surface().isBareMetal()
        ? String.format(
            Locale.ROOT,
            "; %s shows only about %.0f %% of its rise, tape it or tilt the board to be sure",
            named.name(),
            100 * named.surface().emissivity())
        : "";
  }

  /**
   * The true settled rise of a source seen by a camera set to emissivity 1, with its error, in the
   * 8 to 14 um band.
   *
   * @param startCelsius apparent temperature of the place before warming
   * @return empty when the board has no registration, the settled rise is not known, or the surface
   *     is such that no true rise can be given
   */
  public static Optional<Estimate> trueRiseKelvin(
      Board board, HeatSource source, double startCelsius) {
    return source.settledRiseIsKnown()
        ? trueKelvin(
            board, source, startCelsius, seen(source.riseKelvin(), source.riseInterval95()))
        : Optional.empty();
  }

  private static Estimate seen(double kelvin, Interval interval95) {
    return new Estimate(kelvin, interval95.sigmaOf95());
  }

  private static Optional<Estimate> trueKelvin(
      Board board, HeatSource source, double startCelsius, Estimate seen) {
    if (board.registration().isEmpty()) {
      return Optional.empty();
    }
    Surface surface = surfaceAt(board, source).surface();
    Estimate rise = surface.trueRiseKelvin(PlanckBand.LONG_WAVE, startCelsius, seen);
    return Double.isFinite(rise.value()) && Double.isFinite(rise.sigma())
        ? Optional.of(rise)
        : Optional.empty();
  }

  /** The true swing as a clause of a suspect's sentence; empty when none can be given. */
  static String trueSwingClause(Board board, HeatSource source, double startCelsius) {
    return trueKelvin(
            board, source, startCelsius, seen(source.swingKelvin(), source.swingInterval95()))
        .map(
            rise -> {
              Named named = surfaceAt(board, source);
              return String.format(
                  Locale.ROOT,
                  "; truly swings by %s +- %s (%s, emissivity %.2f +- %.2f, mirrors %s +- %s, %s)",
                  Quantity.format(rise.value(), Unit.KELVIN),
                  Quantity.format(rise.sigma(), Unit.KELVIN),
                  named.name(),
                  named.surface().emissivity(),
                  named.surface().emissivitySigma(),
                  Quantity.format(named.surface().reflectedCelsius(), Unit.CELSIUS),
                  Quantity.format(named.surface().reflectedSigmaKelvin(), Unit.KELVIN),
                  board.care().surfaces().reflectedFrom());
            })
        .orElse("");
  }

  /**
   * The true rises of all sources of which one can be given.
   *
   * @param startCelsius apparent temperature of each source's place before warming, in their order;
   *     NaN where the camera has no absolute scale: then the place starts as warm as what it
   *     mirrors
   */
  public static List<TrueRise> trueRises(
      Board board, List<HeatSource> sources, List<Double> startCelsius) {
    List<TrueRise> rises = new ArrayList<>();
    for (int i = 0; i < Math.min(sources.size(), startCelsius.size()); i++) {
      HeatSource source = sources.get(i);
      int index = i;
      trueRiseKelvin(board, source, startOr(board, startCelsius.get(i)))
          .ifPresent(
              rise -> {
                Named named = surfaceAt(board, source);
                rises.add(
                    new TrueRise(
                        index,
                        rise.value(),
                        rise.sigma(),
                        named.name(),
                        named.surface().emissivity(),
                        named.surface().emissivitySigma(),
                        named.surface().reflectedCelsius(),
                        named.surface().reflectedSigmaKelvin(),
                        board.care().surfaces().reflectedFrom(),
                        named.surface().isBareMetal()));
              });
    }
    return rises;
  }

  static double startOr(Board board, double startCelsius) {
    return Double.isNaN(startCelsius) ? board.care().surfaces().reflectedCelsius() : startCelsius;
  }

  private static Named surfaceAt(Board board, HeatSource source) {
    var place = SuspectRanking.position(board, source);
    return board.care().surfaces().at(board, place.xMillimetres(), place.yMillimetres());
  }
}

package railglow.thermal.inverse;

import java.util.List;
import java.util.Optional;
import railglow.thermal.Plane;

/**
 * Undoes the conduction of the plate in a window of the rise maps: least squares in both channels
 * with a penalty on roughness whose strength the noise picks (least predictive risk). Heat only
 * arises, so the map shown is held at zero or above; power is summed in the unconstrained one,
 * which has no bias from that. Coat, contact of the parts and, where the plate is not stated, its
 * diffusivity are taken from the same data by the same rule. Where the model explains the data
 * worse than the noise allows, the noise is taken as that much larger. Pure and deterministic.
 */
public final class SourceInversion {
  private static final double[] ALONE = {1};
  private static final double[] DIFFUSIVITIES = {0.35, 0.5, 0.72, 1, 1.4, 2, 2.8};
  private static final double[] LAGS = {0, 0.05, 0.1, 0.15, 0.2, 0.3, 0.45, 0.7};
  private static final double[] CONTACTS = {0, 3e-6, 6e-6, 1e-5, 1.5e-5, 2e-5, 3e-5, 6e-5};

  private SourceInversion() {}

  /** The choice of all that is not known beforehand. */
  private record Choice(Optics optics, Modes modes, double strength, double risk) {
    double misfit() {
      return Math.sqrt(modes.misfit(strength) / modes.freedom(strength));
    }
  }

  /**
   * @param plate of the board; its heat capacity is taken as it is
   * @param plateStated whether its diffusivity is to be taken as it is, too; else it is searched
   *     within a factor of 2.8 to both sides
   * @param columns places of the sources found, strongest first
   * @param rows as many
   * @return empty when there is no source, or the data hold no heat
   */
  public static Optional<PowerMap> of(
      RiseMaps maps, Plate plate, boolean plateStated, double[] columns, double[] rows) {
    if (columns.length == 0) {
      return Optional.empty();
    }
    Window window = Window.around(columns, rows, maps.inPhase().width(), maps.inPhase().height());
    Search search = Search.of(maps, ChannelSpectra.of(maps, window), plate);
    double[] diffusivities = plateStated ? ALONE : DIFFUSIVITIES;
    Choice first = search.choose(diffusivities, 1);
    double misfit = first.misfit();
    Choice choice = misfit > 1 ? search.choose(diffusivities, misfit) : first;
    return describe(maps, window, choice, misfit);
  }

  /** What stays the same over all choices. */
  private record Search(RiseMaps maps, ChannelSpectra data, ModePowers powers, Plate plate) {
    static Search of(RiseMaps maps, ChannelSpectra data, Plate plate) {
      return new Search(maps, data, ModePowers.of(data), plate);
    }

    /** Coat and contact together, then the plate, then coat and contact once more. */
    Choice choose(double[] diffusivities, double noise) {
      Choice best = coatAndContact(tried(new Optics(plate, 0, 0), noise), noise);
      if (diffusivities.length == 1) {
        return best;
      }
      for (double factor : diffusivities) {
        Optics o = best.optics;
        Plate other = plate.withDiffusivity(factor * plate.diffusivity());
        best = better(best, new Optics(other, o.lagSeconds(), o.contactResistance()), noise);
      }
      return coatAndContact(best, noise);
    }

    private Choice coatAndContact(Choice before, double noise) {
      Choice best = before;
      for (double lag : LAGS) {
        for (double contact : CONTACTS) {
          best = better(best, new Optics(before.optics.plate(), lag, contact), noise);
        }
      }
      return best;
    }

    private Choice better(Choice best, Optics optics, double noise) {
      if (optics.equals(best.optics)) {
        return best;
      }
      Choice other = tried(optics, noise);
      return other.risk < best.risk ? other : best;
    }

    private Choice tried(Optics optics, double noise) {
      Modes modes = Modes.of(maps, data, powers, optics, noise);
      double strength = modes.best();
      return new Choice(optics, modes, strength, modes.risk(strength));
    }
  }

  private static Optional<PowerMap> describe(
      RiseMaps maps, Window window, Choice choice, double misfit) {
    Modes modes = choice.modes;
    FreeMap free = FreeMap.of(modes, choice.strength);
    double[] held = HeldPositive.of(modes, window, choice.strength);
    double area = maps.metresPerPixel() * maps.metresPerPixel();
    PlaceSearch search = new PlaceSearch(window, held, modes.spectrum().columns());
    List<PlaceSearch.Spot> spots = search.spots(free.resolutionPixels(), free.noise());
    if (spots.isEmpty()) {
      return Optional.empty();
    }
    boolean[] aperture = search.around(spots, modes.spectrum().size(), maps.metresPerPixel());
    double seen = area * free.sum(aperture);
    List<PowerPlace> places = search.places(spots, seen);
    return Optional.of(
        new PowerMap(
            plane(maps, window, held, modes.spectrum().columns()),
            free.noise(),
            window,
            free.resolutionPixels(),
            maps.metresPerPixel(),
            choice.optics.plate(),
            choice.optics.lagSeconds(),
            choice.optics.contactResistance(),
            misfit,
            seen,
            area * free.sigmaOfSum(aperture),
            places));
  }

  private static Plane plane(RiseMaps maps, Window window, double[] held, int rowLength) {
    Plane plane = new Plane(maps.inPhase().width(), maps.inPhase().height());
    for (int y = 0; y < window.height(); y++) {
      for (int x = 0; x < window.width(); x++) {
        plane.set(window.left() + x, window.top() + y, (float) held[y * rowLength + x]);
      }
    }
    return plane;
  }
}

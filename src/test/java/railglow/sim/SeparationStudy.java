package railglow.sim;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import railglow.pulse.PulseOrder;
import railglow.sim.circuit.LoadBranch;
import railglow.sim.heat.PlacedPart;
import railglow.thermal.HeatSource;
import railglow.thermal.Look;
import railglow.thermal.Plane;
import railglow.thermal.PlaneNoise;
import railglow.thermal.inverse.Plate;
import railglow.thermal.inverse.PowerMap;
import railglow.thermal.inverse.RiseMaps;
import railglow.thermal.inverse.SourceInversion;

/**
 * Two leaks of 16 ohm on the far side of the simulated board, so that only the plate's warmth is
 * seen: how far apart must they be to be two in the plain map and in the power map. Prints the
 * table of docs/detection.md. Arguments: cycles, distances in millimetres.
 */
final class SeparationStudy {
  private static final double PERIOD = 2;
  private static final double MIDDLE_X = 60;
  private static final double Y = 48;

  private SeparationStudy() {}

  private static BenchScenario bench(double millimetres) {
    BenchScenario base = BenchScenarios.named("two-leaks").orElseThrow();
    List<PlacedPart> parts = new ArrayList<>(base.board().parts());
    for (int side = -1; side <= 1; side += 2) {
      double x = (MIDDLE_X + side * millimetres / 2) * 1e-3;
      parts.add(
          PlacedPart.of(side < 0 ? "X1" : "X2", x, Y * 1e-3, 1e-3, 1e-3, 0.5e-3, 60_000, 0.9)
              .onBottom());
    }
    return base.withBoard(base.board().withParts(parts))
        .withCircuit(
            base.circuit()
                .withBranches(
                    List.of(
                        LoadBranch.of(BenchScenarios.ALL_OVER_THE_BOARD, 45),
                        LoadBranch.fault("X1", 16),
                        LoadBranch.fault("X2", 16))));
  }

  /** Lowest value between two places over the lower of both; 1 where there is no dip. */
  private static double dip(Plane plane, double from, double to, double row) {
    int y = (int) Math.round(row);
    double least = Double.POSITIVE_INFINITY;
    double low = Math.min(highest(plane, from, y), highest(plane, to, y));
    for (int x = (int) Math.round(from); x <= Math.round(to); x++) {
      least = Math.min(least, plane.at(x, y));
    }
    return low > 0 ? Math.max(0, Math.min(1, least / low)) : 1;
  }

  private static double highest(Plane plane, double column, int row) {
    int x = (int) Math.round(column);
    return Math.max(plane.at(x, row), Math.max(plane.at(x - 1, row), plane.at(x + 1, row)));
  }

  private static long near(double[] columns, double[] rows, double column, double row) {
    long count = 0;
    for (int i = 0; i < columns.length; i++) {
      count += Math.hypot(columns[i] - column, rows[i] - row) <= 2 ? 1 : 0;
    }
    return count;
  }

  public static void main(String[] arguments) {
    int cycles = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 15;
    System.out.println(
        "| mm apart | called | truly | dip in plain map | dip in power map | told apart | resolution"
            + " mm | W seen | W truly |");
    System.out.println("|---|---|---|---|---|---|---|---|---|");
    for (int k = 1; k < arguments.length; k++) {
      line(Double.parseDouble(arguments[k]), cycles);
    }
  }

  /**
   * The power map of what was called on the simulated board, by its own plate.
   *
   * @param plateStated whether the plate's conduction is taken as known
   */
  static Optional<PowerMap> powerMap(Look look, BenchScenario bench, boolean plateStated) {
    RiseMaps maps =
        new RiseMaps(
            look.inPhase(),
            look.quadrature(),
            PlaneNoise.sigma(look.inPhase()),
            PlaneNoise.sigma(look.quadrature()),
            0.5e-3,
            0.7,
            0.9,
            PERIOD,
            bench.camera().lagSeconds(),
            look.oneLag());
    return SourceInversion.of(
        maps,
        Plate.board(1.6e-3, 0.28e-3, Plate.USUAL_LOSS),
        plateStated,
        look.sources().stream().mapToDouble(HeatSource::column).toArray(),
        look.sources().stream().mapToDouble(HeatSource::row).toArray());
  }

  private static void line(double millimetres, int cycles) {
    BenchScenario bench = bench(millimetres);
    Look look = new BenchRun(bench, PulseStudy.sequence(PulseOrder.SQUARE, cycles)).toTheEnd();
    double[] columns = look.sources().stream().mapToDouble(HeatSource::column).toArray();
    double[] rows = look.sources().stream().mapToDouble(HeatSource::row).toArray();
    Optional<PowerMap> map = powerMap(look, bench, true);
    double left = bench.board().column(bench.board().part("X1").orElseThrow());
    double right = bench.board().column(bench.board().part("X2").orElseThrow());
    double row = bench.board().row(bench.board().part("X1").orElseThrow());
    long called = near(columns, rows, left, row) + near(columns, rows, right, row);
    double[] x =
        map.stream().flatMap(m -> m.places().stream()).mapToDouble(p -> p.column()).toArray();
    double[] y = map.stream().flatMap(m -> m.places().stream()).mapToDouble(p -> p.row()).toArray();
    boolean apart = near(x, y, left, row) == 1 && near(x, y, right, row) == 1 && x.length == 2;
    double volts = 1 / (1 + 0.12 * (1 / 45.0 + 2 / 16.0));
    System.out.printf(
        Locale.ROOT,
        "| %.1f | %d | %d | %.2f | %.2f | %s | %.1f | %.3f | %.3f |%n",
        millimetres,
        columns.length,
        called,
        dip(look.inPhase(), left, right, row),
        map.map(m -> dip(m.wattsPerSquareMetre(), left, right, row)).orElse(Double.NaN),
        apart ? "yes" : "no",
        map.map(PowerMap::resolutionMillimetres).orElse(Double.NaN),
        map.map(PowerMap::seenWatts).orElse(Double.NaN),
        volts * volts * 2 / 16);
  }
}

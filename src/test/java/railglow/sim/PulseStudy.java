package railglow.sim;

import java.util.Locale;
import railglow.pulse.PulseOrder;
import railglow.pulse.PulseSequence;
import railglow.sim.picture.Reflection;
import railglow.thermal.HeatSource;
import railglow.thermal.Look;

/**
 * Square and coded pulses beside a warm thing that sways once a period, on the simulated bench.
 * Prints the table of docs/detection.md. Arguments: cycles, seeds.
 */
final class PulseStudy {
  private PulseStudy() {}

  static PulseSequence sequence(PulseOrder order, int cycles) {
    return new PulseSequence(
        "study", "study", 1, 0.5, 2, 8, cycles, false, 2, 1, 0.05, 70, 30, order);
  }

  static BenchScenario swaying(String name, double riseKelvin, double periodSeconds) {
    return BenchScenarios.named(name)
        .orElseThrow()
        .withReflection(new Reflection(riseKelvin, 5, 90, 60, 6, periodSeconds));
  }

  /** What a look says of the truth: whether the fault was found, and how much that is none. */
  static String verdict(Look look, BenchScenario bench, String part) {
    int found = 0;
    int wrong = 0;
    for (HeatSource source : look.sources()) {
      double away = Double.POSITIVE_INFINITY;
      if (!part.isEmpty()) {
        var at = bench.board().part(part).orElseThrow();
        away =
            Math.hypot(
                source.column() - bench.board().column(at), source.row() - bench.board().row(at));
      }
      found += away < 8 ? 1 : 0;
      wrong += away < 8 ? 0 : 1;
    }
    return found + " right, " + wrong + " wrong";
  }

  public static void main(String[] arguments) {
    int cycles = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 24;
    int seeds = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 2;
    System.out.println("| bench | sways every | seed | square | coded |");
    System.out.println("|---|---|---|---|---|");
    for (String name : new String[] {"healthy", "hx12"}) {
      for (double every : new double[] {2, 2.01, 11}) {
        for (int seed = 1; seed <= seeds; seed++) {
          BenchScenario bench = swaying(name, 4, every).withSeed(seed);
          StringBuilder line =
              new StringBuilder(
                  String.format(Locale.ROOT, "| %s | %.2f s | %d |", name, every, seed));
          for (PulseOrder order : PulseOrder.values()) {
            Look look = new BenchRun(bench, sequence(order, cycles)).toTheEnd();
            line.append(' ').append(verdict(look, bench, name.equals("hx12") ? "C37" : ""));
            line.append(" |");
          }
          System.out.println(line);
        }
      }
    }
  }
}

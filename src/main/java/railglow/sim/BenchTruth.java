package railglow.sim;

import java.util.Optional;
import railglow.sim.heat.PlacedPart;
import railglow.sim.truth.TruthEvent;
import railglow.sim.truth.TruthLog;

/** What is true of a bench before anything happens. */
final class BenchTruth {
  private BenchTruth() {}

  static void noteStart(BenchScenario scenario, long startNanos, TruthLog truth) {
    truth.note(
        startNanos,
        TruthEvent.Kind.BENCH,
        "scenario",
        scenario.name(),
        "seed",
        scenario.seed(),
        "boardToPicture",
        scenario.board().view().matrix(),
        "faults",
        scenario.faults().stream().map(fault -> fault.written()).toList());
    for (String name : scenario.faultyParts()) {
      Optional<PlacedPart> part = scenario.board().part(name);
      part.ifPresent(
          p ->
              truth.note(
                  startNanos,
                  TruthEvent.Kind.SOURCE,
                  "part",
                  name,
                  "column",
                  scenario.board().column(p),
                  "row",
                  scenario.board().row(p)));
    }
  }
}

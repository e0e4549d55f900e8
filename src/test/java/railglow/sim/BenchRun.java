package railglow.sim;

import java.util.Arrays;
import java.util.Optional;
import railglow.pulse.CycleWindow;
import railglow.pulse.PlannedEdge;
import railglow.pulse.PulseOrder;
import railglow.pulse.PulseSequence;
import railglow.pulse.Timeline;
import railglow.sim.truth.TruthLog;
import railglow.thermal.CodedPairs;
import railglow.thermal.CountSamples;
import railglow.thermal.CycleTimes;
import railglow.thermal.DetectionSettings;
import railglow.thermal.Detector;
import railglow.thermal.Look;
import railglow.thermal.QuarterAccumulator;
import railglow.thermal.QuarterMeans;

/** A hunt on a simulated bench in invented time: timeline, frames, quarters, detector. */
final class BenchRun {
  /** As {@link railglow.sim.picture.BoardScene} has them: count 0.01 K. */
  private static final double KELVIN_PER_COUNT = 0.01;

  private final BenchWorld world;
  private final Timeline timeline;
  private final Detector detector;
  private DetectionSettings settings;
  private final CodedPairs pairs = new CodedPairs();

  BenchRun(BenchScenario scenario, PulseSequence sequence) {
    world = new BenchWorld(scenario, 0, new TruthLog());
    timeline = Timeline.of(sequence);
    boolean coded = sequence.order() == PulseOrder.CODED;
    int perUnit = coded ? 2 : 1;
    settings =
        DetectionSettings.usual(
            sequence.periodSeconds(),
            scenario.camera().lagSeconds(),
            sequence.familyWiseError(),
            sequence.minCycles() / perUnit,
            sequence.maxCycles() / perUnit);
    settings = coded ? settings.inPairs() : settings;
    detector = new Detector(settings, scenario.camera().width(), scenario.camera().height());
    world.receive("CURR " + sequence.maxAmperes() + ";VOLT " + sequence.levelVolts(), 0);
  }

  /** All cycles, then one look. */
  Look toTheEnd() {
    return run(false);
  }

  /** Looks after every lawful cycle until something is called; the last look when nothing is. */
  Look untilFound() {
    return run(true);
  }

  private Look run(boolean stopWhenFound) {
    int width = world.scenario().camera().width();
    int height = world.scenario().camera().height();
    QuarterAccumulator quarters = new QuarterAccumulator(width, height, KELVIN_PER_COUNT);
    FramesOfCycle frames = new FramesOfCycle();
    int edge = 0;
    Look look = null;
    for (CycleWindow cycle : timeline.cycles()) {
      while (world.exposureNanos(world.nextFrame()) < cycle.endNanos()) {
        long now = world.exposureNanos(world.nextFrame());
        while (edge < timeline.edges().size() && timeline.edges().get(edge).offsetNanos() <= now) {
          PlannedEdge next = timeline.edges().get(edge++);
          world.receive("OUTP " + (next.on() ? "ON" : "OFF"), next.offsetNanos());
        }
        short[] counts = new short[width * height];
        world.takeFrame(now, counts);
        int quarter = cycle.quarterAt(now);
        if (quarter > 0) {
          quarters.add(quarter, new CountSamples(width, height, counts));
          frames.note(quarter, (now - cycle.startNanos()) * 1e-9);
        }
      }
      QuarterMeans means = quarters.finish(cycle.cycle()).at(times(cycle, frames));
      Optional<QuarterMeans> unit =
          settings.coded() ? pairs.take(means, cycle.inverted()) : Optional.of(means);
      unit.ifPresent(detector::addCycle);
      if (stopWhenFound && unit.isPresent() && detector.cycles() >= settings.minCycles()) {
        look = detector.look();
        if (!look.sources().isEmpty()) {
          return look;
        }
      }
    }
    return stopWhenFound && look != null ? look : detector.look();
  }

  private CycleTimes times(CycleWindow cycle, FramesOfCycle frames) {
    PlannedEdge[] own =
        timeline.edges().stream()
            .filter(edge -> edge.offsetNanos() >= cycle.startNanos())
            .filter(edge -> edge.offsetNanos() < cycle.endNanos())
            .toArray(PlannedEdge[]::new);
    return frames.take(
        (cycle.endNanos() - cycle.startNanos()) * 1e-9,
        cycle.inverted(),
        !own[0].on(),
        Arrays.stream(own)
            .mapToDouble(edge -> (edge.offsetNanos() - cycle.startNanos()) * 1e-9)
            .toArray());
  }
}

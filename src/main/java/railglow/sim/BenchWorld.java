package railglow.sim;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import railglow.sim.circuit.Circuit;
import railglow.sim.circuit.CircuitSettings;
import railglow.sim.circuit.Disturbances;
import railglow.sim.circuit.LoadBranch;
import railglow.sim.circuit.OutputStage;
import railglow.sim.circuit.OutputWatch;
import railglow.sim.fault.FaultKind;
import railglow.sim.fault.FaultSwitches;
import railglow.sim.heat.BoardHeat;
import railglow.sim.picture.BoardScene;
import railglow.sim.picture.PushedView;
import railglow.sim.picture.SimulatedCamera;
import railglow.sim.truth.TruthEvent;
import railglow.sim.truth.TruthLog;
import railglow.sim.wire.SimulatedSupply;
import railglow.sim.wire.SupplySettings.StatusFamily;

/**
 * The physics of the whole bench, with time as a parameter: lines go to the supply, frames come
 * from the camera, and the heat between them is that of the circuit.
 *
 * <p>The electrical side (lines, outputs) and the picture side (heat, frames) may be used by one
 * thread each; what passes between them is the heat of each frame interval. Same scenario and same
 * calls give the same bytes.
 */
public final class BenchWorld {
  private static final int MAX_WAITING_INTERVALS = 100_000;

  /** Heat is put into the board evenly within an interval, and the scene changes evenly. */
  private static final long MOST_INTERVAL_NANOS = 20_000_000;

  private final BenchScenario scenario;
  private final long startNanos;
  private final FaultSwitches faults;
  private final TruthLog truth;
  private final SimulatedSupply supply;
  private final BoardHeat heat;
  private final BoardScene scene;
  private final SimulatedCamera camera;
  private final ArrayDeque<HeatInterval> intervals = new ArrayDeque<>();
  private final Map<String, Integer> partIndex = new HashMap<>();
  private final double[] joules;
  private final float[] picture;
  private final PushedView view;
  private long nextBoundary;
  private long nextFrame;
  private long heatedUntil;
  private long intervalEndNanos;
  private double watchedAmperes = Double.POSITIVE_INFINITY;
  private boolean aboveWatched;
  private Circuit.Mode lastMode = Circuit.Mode.OFF;

  public BenchWorld(BenchScenario scenario, long startNanos, TruthLog truth) {
    this.scenario = scenario;
    this.startNanos = startNanos;
    this.heatedUntil = startNanos;
    this.intervalEndNanos = startNanos;
    this.truth = truth;
    faults = new FaultSwitches(startNanos, scenario.faults());
    supply = new SimulatedSupply(scenario.supply(), outputs(scenario), faults, scenario.seed());
    heat = scenario.board().newHeat(scenario.roomCelsius());
    int width = scenario.camera().width();
    int height = scenario.camera().height();
    scene = scenario.board().newScene(heat, width, height, scenario.reflection());
    camera = new SimulatedCamera(scenario.camera(), scenario.seed(), scenario.roomCelsius());
    picture = new float[width * height];
    view = new PushedView(width, height);
    joules = new double[heat.parts().size()];
    for (int i = 0; i < heat.parts().size(); i++) {
      partIndex.put(heat.parts().get(i).name(), i);
    }
    BenchTruth.noteStart(scenario, startNanos, truth);
  }

  private List<OutputStage> outputs(BenchScenario bench) {
    List<OutputStage> outputs = new ArrayList<>();
    outputs.add(
        new OutputStage(
            new Circuit(bench.circuit()),
            new BenchDisturbances(bench, faults, truth),
            new Watch(),
            resumes(bench),
            startNanos));
    if (bench.supply().channels() > 1) {
      CircuitSettings idle =
          bench.circuit().withBranches(List.of(LoadBranch.of("idle load", 1000)));
      outputs.add(
          new OutputStage(
              new Circuit(idle), Disturbances.NONE, OutputWatch.NONE, resumes(bench), startNanos));
    }
    return outputs;
  }

  private static boolean resumes(BenchScenario bench) {
    return bench.supply().family() == StatusFamily.REGULATION_IN_QUESTIONABLE;
  }

  public BenchScenario scenario() {
    return scenario;
  }

  public FaultSwitches faults() {
    return faults;
  }

  public TruthLog truth() {
    return truth;
  }

  public SimulatedSupply supply() {
    return supply;
  }

  public SimulatedCamera camera() {
    return camera;
  }

  public BoardHeat heat() {
    return heat;
  }

  /** Notes in the truth whenever the true current passes this value upwards. */
  public synchronized void watchAmperes(double amperes) {
    watchedAmperes = amperes;
    aboveWatched = false;
  }

  /** Gives a line to the supply; null when it answers nothing. */
  public synchronized String receive(String line, long nowNanos) {
    advance(nowNanos);
    if (!line.endsWith("?")) {
      truth.note(nowNanos, TruthEvent.Kind.RECEIVED, "line", line);
    }
    OutputStage output = supply.output(1);
    Object before = List.of(output.isReallyOn(), output.setVolts(), output.setAmperes());
    String reply = supply.receive(line, nowNanos);
    // No time has passed: what was heated until now was heated before the change.
    if (!before.equals(List.of(output.isReallyOn(), output.setVolts(), output.setAmperes()))) {
      addInterval(nowNanos, false);
    }
    return reply;
  }

  /** Lets time pass for the electrical side. */
  public synchronized void advance(long nowNanos) {
    while (exposureNanos(nextBoundary) <= nowNanos) {
      long boundary = exposureNanos(nextBoundary++);
      pass(boundary);
      addInterval(boundary, true);
    }
    pass(nowNanos);
  }

  private void pass(long untilNanos) {
    while (untilNanos - intervalEndNanos > MOST_INTERVAL_NANOS) {
      long end = intervalEndNanos + MOST_INTERVAL_NANOS;
      supply.advanceTo(end);
      addInterval(end, false);
    }
    supply.advanceTo(untilNanos);
  }

  private void addInterval(long nanos, boolean endsAtFrame) {
    intervalEndNanos = nanos;
    Circuit circuit = supply.output(1).circuit();
    if (intervals.size() < MAX_WAITING_INTERVALS) {
      intervals.add(
          new HeatInterval(
              nanos,
              endsAtFrame,
              circuit.takeJoules(),
              circuit.railVolts(),
              circuit.outputAmperes(),
              supply.output(1).isReallyOn()));
    }
  }

  /** Mid-exposure of a frame on the bench's clock. */
  public long exposureNanos(long number) {
    return startNanos + Math.round(camera.exposureSeconds(number) * 1e9);
  }

  /** The number of the next frame that {@link #takeFrame} will give. */
  public long nextFrame() {
    return nextFrame;
  }

  /**
   * Takes the next frame. Used by one thread only.
   *
   * @param nowNanos not before its exposure
   * @param counts filled with its image
   * @return its number
   */
  public long takeFrame(long nowNanos, short[] counts) {
    double frameSeconds = nextFrame == 0 ? 0 : 1 / scenario.camera().framesPerSecond();
    Map<String, Double> joulesOfFrame = new HashMap<>();
    HeatInterval interval = takeInterval(nowNanos);
    while (!interval.endsAtFrame()) {
      interval.addTo(joulesOfFrame);
      heatUntil(interval);
      camera.see((interval.nanos() - startNanos) * 1e-9, picture);
      interval = takeInterval(nowNanos);
    }
    interval.addTo(joulesOfFrame);
    heatUntil(interval);
    camera.take(nextFrame, picture, counts);
    noteFrame(interval, joulesOfFrame, frameSeconds);
    return nextFrame++;
  }

  /** Lets the heat of an interval flow and leaves what the lens then shows in the picture. */
  private void heatUntil(HeatInterval interval) {
    Arrays.fill(joules, 0);
    for (Map.Entry<String, Double> heatOf : interval.joules().entrySet()) {
      Integer index = partIndex.get(heatOf.getKey());
      if (index != null) {
        joules[index] += heatOf.getValue();
      }
    }
    double seconds = Math.max(0, interval.nanos() - heatedUntil) * 1e-9;
    heatedUntil = Math.max(heatedUntil, interval.nanos());
    heat.advance(
        seconds, joules, interval.joules().getOrDefault(BenchScenarios.ALL_OVER_THE_BOARD, 0.0));
    warmResistances();
    scene.render((interval.nanos() - startNanos) * 1e-9, picture);
    faults
        .active(FaultKind.CAMERA_MOVED, interval.nanos())
        .map(push -> (int) Math.round(push.value()))
        .ifPresent(pixels -> view.push(picture, pixels, pixels / 2));
  }

  private synchronized void warmResistances() {
    supply
        .output(1)
        .circuit()
        .warm(place -> partIndex.containsKey(place) ? heat.partRise(partIndex.get(place)) : 0);
  }

  private synchronized HeatInterval takeInterval(long nowNanos) {
    if (intervals.isEmpty()) {
      advance(Math.max(nowNanos, exposureNanos(nextBoundary)));
    }
    return intervals.remove();
  }

  private void noteFrame(HeatInterval interval, Map<String, Double> joulesOfFrame, double seconds) {
    List<Object> facts = new ArrayList<>();
    facts.addAll(
        List.of(
            "frame",
            nextFrame,
            "on",
            interval.on(),
            "volts",
            interval.volts(),
            "amperes",
            interval.amperes()));
    for (String name : scenario.faultyParts()) {
      Integer index = partIndex.get(name);
      if (index != null) {
        facts.add(name + "Watts");
        facts.add(seconds > 0 ? joulesOfFrame.getOrDefault(name, 0.0) / seconds : 0.0);
        facts.add(name + "RiseKelvin");
        facts.add(heat.partRise(index));
      }
    }
    truth.note(interval.nanos(), TruthEvent.Kind.FRAME, facts.toArray());
  }

  /** Writes what happens at the board's output into the truth. */
  private final class Watch implements OutputWatch {
    @Override
    public void onOutput(long nowNanos, boolean on, double setVolts) {
      if (on) {
        faults.outputWentOn(nowNanos);
      }
      truth.note(nowNanos, TruthEvent.Kind.OUTPUT, "on", on, "setVolts", setVolts);
    }

    @Override
    public void onTrip(long nowNanos, boolean overVoltage) {
      truth.note(
          nowNanos, TruthEvent.Kind.TRIP, "cause", overVoltage ? "overvoltage" : "overcurrent");
      supply.refreshStatus();
    }

    @Override
    public void onStep(long nowNanos, Circuit circuit) {
      if (circuit.mode() != lastMode) {
        lastMode = circuit.mode();
        supply.refreshStatus();
      }
      boolean above = circuit.outputAmperes() > watchedAmperes;
      if (above && !aboveWatched) {
        truth.note(nowNanos, TruthEvent.Kind.CURRENT_ABOVE, "amperes", circuit.outputAmperes());
      }
      aboveWatched = above;
    }
  }
}

package railglow.run;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import railglow.journal.CameraFacts;
import railglow.journal.Entry;
import railglow.journal.FrameStoreWriter;
import railglow.journal.JournalWriter;
import railglow.journal.RunFolder;
import railglow.journal.RunHeader;
import railglow.journal.SampleType;
import railglow.observed.Edge;
import railglow.observed.Frame;
import railglow.observed.OutputState;
import railglow.observed.Regulation;
import railglow.observed.SupplyReading;
import railglow.pulse.PulseSequence;
import railglow.safety.Envelope;
import railglow.safety.StopCause;
import railglow.sim.BenchScenario;
import railglow.sim.BenchWorld;
import railglow.sim.HeatAfterSwitch;
import railglow.sim.picture.FrameFate;
import railglow.sim.truth.TruthLog;
import railglow.thermal.CountSamples;
import railglow.thermal.DetectionSettings;

/**
 * A recorded run over a simulated bench in invented time, as `bench --align` leaves one: some
 * frames late or lost, every edge somewhere between its command and its confirmation.
 */
final class ResistorRun {
  /** What the simulated camera really has. */
  static final double LATENCY_SECONDS = 0.040;

  static final double LAG_SECONDS = 0.010;
  private static final double PERIOD_SECONDS = 1.713;
  private static final double EDGE_SECONDS = 0.004;

  /** The question whether it is done follows the command: it is not answered at once. */
  private static final double ANSWERED_AFTER_PART = 0.75;

  private static final long READ_AGAIN_NANOS = 45_000_000;
  private static final double NANOS = 1e9;
  private static final String SETTING = "CURR 0.2;VOLT 1";

  private ResistorRun() {}

  /** Records a run of so many pulses; the same for the same scenario with its seed. */
  static RunFolder record(BenchScenario scenario, int pulses, Path root) throws IOException {
    BenchWorld world = new BenchWorld(scenario, 0, new TruthLog());
    int width = scenario.camera().width();
    int height = scenario.camera().height();
    // SplittableRandom, for java.util.Random begins almost alike for seeds next to each other.
    SplittableRandom random = new SplittableRandom(scenario.seed());
    double place = ANSWERED_AFTER_PART * random.nextDouble();
    double start = 2 + 0.04 * random.nextDouble();
    world.receive(SETTING, 0);
    RunFolder folder =
        new RunFolder(root.resolve(scenario.name() + scenario.seed() + "-" + pulses));
    folder.prepare(1L << 20);
    CountSamples image = new CountSamples(width, height);
    try (JournalWriter journal = JournalWriter.create(folder, header(scenario), 1L << 20);
        FrameStoreWriter frames =
            FrameStoreWriter.create(folder.frames(), SampleType.of(image), width, height)) {
      int next = 0;
      double end = start + pulses * PERIOD_SECONDS;
      while (world.exposureNanos(world.nextFrame()) < end * NANOS) {
        long number = world.nextFrame();
        long exposure = world.exposureNanos(number);
        while (next < 2 * pulses && due(start, next) * NANOS < exposure) {
          boolean on = next % 2 == 0;
          long really = Math.round(due(start, next) * NANOS);
          long commanded = really - Math.round(EDGE_SECONDS * place * NANOS);
          long confirmed = commanded + Math.round(EDGE_SECONDS * NANOS);
          world.receive("OUTP " + (on ? "ON" : "OFF"), really);
          journal.append(new Entry.EdgeMade(new Edge(next, on, 1, commanded, confirmed)));
          journal.append(new Entry.Reading(reading(world, on, confirmed)));
          journal.append(new Entry.Reading(reading(world, on, confirmed + READ_AGAIN_NANOS)));
          next++;
        }
        FrameFate fate = world.camera().fate(number);
        world.takeFrame(exposure, image.counts());
        if (fate == FrameFate.SENT || fate == FrameFate.LATE) {
          double delay = world.camera().latencySeconds(fate) + 0.0005 * random.nextDouble();
          Frame frame = new Frame(image);
          frame.begin(number, exposure + Math.round(delay * NANOS));
          frames.append(frame);
        }
      }
      journal.append(
          new Entry.Closed(
              Math.round(end * NANOS),
              StopCause.PROGRAMME_FINISHED,
              OutputState.PROVEN_OFF,
              0,
              0,
              0,
              0));
    }
    return folder;
  }

  /** As the supply's keeper reads: volts first, then amperes, some time for the words. */
  private static SupplyReading reading(BenchWorld world, boolean on, long startNanos) {
    double volts = Double.parseDouble(world.receive("MEAS:VOLT?", startNanos + 500_000));
    double amperes = Double.parseDouble(world.receive("MEAS:CURR?", startNanos + 1_000_000));
    return new SupplyReading(
        startNanos,
        startNanos + 2_500_000,
        volts,
        amperes,
        on,
        on ? Regulation.CONSTANT_VOLTAGE : Regulation.NONE,
        Set.of());
  }

  /**
   * How long after its switch the supply really heats the resistor, and stops: the mean of both.
   */
  static double supplyRiseSeconds(BenchScenario scenario) {
    String place = scenario.circuit().branches().get(0).place();
    return HeatAfterSwitch.meanSeconds(scenario, SETTING, place);
  }

  private static double due(double start, int edge) {
    return start + PERIOD_SECONDS * (edge / 2) + PERIOD_SECONDS / 2 * (edge % 2);
  }

  private static RunHeader header(BenchScenario scenario) {
    PulseSequence sequence =
        new PulseSequence(
            "alignment", "test", 1, 0.2, PERIOD_SECONDS, 4, 200, false, 2, 1, 0.05, 90, 60);
    return new RunHeader(
        RunHeader.CURRENT_FORMAT,
        "test",
        Instant.EPOCH,
        0,
        "alignment",
        "",
        "",
        sequence,
        Envelope.OPEN,
        new CameraFacts(
            "simulated camera",
            scenario.camera().width(),
            scenario.camera().height(),
            "uint16",
            scenario.camera().framesPerSecond(),
            0.01,
            -273.15,
            0.05,
            LATENCY_SECONDS,
            LAG_SECONDS,
            true,
            false,
            1,
            65_535),
        "",
        0,
        List.of(),
        DetectionSettings.usual(PERIOD_SECONDS, LAG_SECONDS, 0.05, 4, 200),
        List.of(),
        Map.of(),
        List.of());
  }
}

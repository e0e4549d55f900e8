package railglow.run.reduction;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import railglow.journal.CameraFacts;
import railglow.journal.Entry;
import railglow.journal.RunHeader;
import railglow.observed.Edge;
import railglow.observed.Frame;
import railglow.observed.Regulation;
import railglow.observed.SupplyReading;
import railglow.pulse.CycleWindow;
import railglow.pulse.PulseSequence;
import railglow.pulse.Timeline;
import railglow.safety.Envelope;
import railglow.thermal.CountSamples;
import railglow.thermal.DetectionSettings;
import railglow.thermal.Look;

/** A small run in invented time: 32 x 24 pixels, 25 Hz, period 2 s, a warm spot when told. */
final class InventedRun {
  static final int WIDTH = 32;
  static final int HEIGHT = 24;
  static final long MS = 1_000_000L;
  private static final long FRAME_NANOS = 40 * MS;
  private static final long LATENCY_NANOS = 30 * MS;
  static final PulseSequence SEQUENCE =
      new PulseSequence("t", "test", 1.5, 0.5, 2.0, 4, 8, false, 1.0, 1.0, 0.05, 70, 30);
  final RunHeader header;
  final List<Entry> supply = new ArrayList<>();
  final List<Frame> frames = new ArrayList<>();
  final List<String> notes = new ArrayList<>();
  final List<Look> looks = new ArrayList<>();

  InventedRun(long startNanos, double spotCounts, long seed) {
    this(startNanos, spotCounts, seed, true);
  }

  /**
   * @param numbersAreCounted whether the camera has a frame counter
   */
  InventedRun(long startNanos, double spotCounts, long seed, boolean numbersAreCounted) {
    List<CycleWindow> cycles = new ArrayList<>();
    Timeline timeline = Timeline.of(SEQUENCE);
    timeline.cycles().forEach(cycle -> cycles.add(cycle.shifted(startNanos)));
    header =
        new RunHeader(
            1,
            "test",
            Instant.EPOCH,
            startNanos,
            "run",
            "",
            "",
            SEQUENCE,
            Envelope.OPEN,
            new CameraFacts(
                "camera",
                WIDTH,
                HEIGHT,
                "uint16",
                25,
                0.01,
                -273.15,
                0.05,
                0.03,
                0.01,
                numbersAreCounted,
                false,
                1,
                65_535),
            "",
            0.1,
            List.of(),
            DetectionSettings.usual(2.0, 0.01, 0.05, 4, 8),
            cycles,
            Map.of(),
            List.of());
    makeSupply(cycles);
    makeFrames(startNanos, timeline.endOffsetNanos(), cycles, spotCounts, seed);
  }

  /** The run's header as it would be of a camera whose counts mean nothing known. */
  RunHeader withoutScale() {
    CameraFacts c = header.camera();
    return new RunHeader(
        header.formatVersion(),
        header.programVersion(),
        header.started(),
        header.startNanos(),
        header.runId(),
        header.board(),
        header.rail(),
        header.sequence(),
        header.envelope(),
        new CameraFacts(
            c.name(),
            c.width(),
            c.height(),
            c.sampleType(),
            c.framesPerSecond(),
            Double.NaN,
            Double.NaN,
            Double.NaN,
            c.latencySeconds(),
            c.timeConstantSeconds(),
            c.numbersAreCounted(),
            c.timesAreExposures(),
            c.shutterSettlingSeconds(),
            c.saturationValue()),
        header.supplyIdentity(),
        header.leadOhms(),
        header.protections(),
        header.detection(),
        header.cycles(),
        header.usedFiles(),
        header.commandLine());
  }

  private void makeSupply(List<CycleWindow> cycles) {
    long end = cycles.get(cycles.size() - 1).endNanos() + 1000 * MS;
    boolean on = false;
    int edge = 0;
    for (long t = header.startNanos() - 100 * MS; t < end; t += 50 * MS) {
      while (edge < 2 * cycles.size() && plannedEdge(cycles, edge) <= t) {
        long planned = plannedEdge(cycles, edge);
        on = edge % 2 == 0;
        supply.add(
            new Entry.EdgeMade(new Edge(edge, on, on ? 1.5 : 0, planned + MS, planned + 3 * MS)));
        edge++;
      }
      supply.add(
          new Entry.Reading(
              new SupplyReading(
                  t + 5 * MS,
                  t + 10 * MS,
                  on ? 1.5 : 0,
                  on ? 0.25 : 0,
                  on,
                  on ? Regulation.CONSTANT_VOLTAGE : Regulation.NONE,
                  Set.of())));
    }
  }

  private static long plannedEdge(List<CycleWindow> cycles, int edge) {
    CycleWindow cycle = cycles.get(edge / 2);
    return edge % 2 == 0 ? cycle.onNanos() : cycle.offNanos();
  }

  private void makeFrames(
      long start, long length, List<CycleWindow> cycles, double spotCounts, long seed) {
    Random random = new Random(seed);
    long number = 0;
    for (long t = start; t < start + length; t += FRAME_NANOS) {
      short[] counts = new short[WIDTH * HEIGHT];
      double heat = isOn(cycles, t) ? spotCounts : 0;
      for (int i = 0; i < counts.length; i++) {
        double dx = i % WIDTH - 20.3;
        double dy = i / WIDTH - 9.7;
        double spot = heat * Math.exp(-(dx * dx + dy * dy) / 8);
        counts[i] = (short) Math.round(29_000 + 3 * (i % 7) + 5 * random.nextGaussian() + spot);
      }
      Frame frame = new Frame(new CountSamples(WIDTH, HEIGHT, counts));
      frame.begin(number++, t + LATENCY_NANOS);
      frames.add(frame);
    }
  }

  /** Whether the output was on when a frame was taken. */
  boolean isOnAt(Frame frame) {
    return isOn(header.cycles(), frame.arrivalNanos() - LATENCY_NANOS);
  }

  private static boolean isOn(List<CycleWindow> cycles, long nanos) {
    return cycles.stream().anyMatch(c -> nanos >= c.onNanos() && nanos < c.offNanos());
  }

  /** Feeds everything, supply events lagging behind the frames by a time. */
  Reduced reduce(long supplyLagNanos, List<Entry.Cycle> cyclesSeen) {
    Reduction reduction = reduction(cyclesSeen, LooksMade.ALL);
    int event = 0;
    for (Frame frame : frames) {
      while (event < supply.size()
          && supply.get(event).nanos() <= frame.arrivalNanos() - supplyLagNanos) {
        give(reduction, supply.get(event++));
      }
      reduction.onFrame(fresh(frame));
    }
    while (event < supply.size()) {
      give(reduction, supply.get(event++));
    }
    return reduction.finish();
  }

  /** Feeds all of the supply first and leaves out looks, as a replay does. */
  Reduced replay(List<Entry.Cycle> cyclesSeen) {
    return replayed(reduction(cyclesSeen, LooksMade.UNTIL_CALLED));
  }

  /** The same with a look now and then; empty where it says that looks are lacking. */
  Optional<Reduced> replayWithFewLooks() {
    Reduction reduction = reduction(new ArrayList<>(), LooksMade.NOW_AND_THEN);
    Reduced reduced = replayed(reduction);
    return reduction.lacksLooks() ? Optional.empty() : Optional.of(reduced);
  }

  private Reduced replayed(Reduction reduction) {
    supply.forEach(entry -> give(reduction, entry));
    reduction.allEdgesKnown();
    frames.forEach(frame -> reduction.onFrame(fresh(frame)));
    return reduction.finish();
  }

  private Reduction reduction(List<Entry.Cycle> cyclesSeen, LooksMade made) {
    return new Reduction(
        header,
        new CountSamples(WIDTH, HEIGHT),
        new DeafListener() {
          @Override
          public void onCycle(Entry.Cycle cycle) {
            cyclesSeen.add(cycle);
          }

          @Override
          public void onLook(Look look, long nowNanos) {
            looks.add(look);
          }

          @Override
          public void onNote(String sentence, long nowNanos) {
            // The invented board is a plain plate, and that is told in every run.
            if (!sentence.startsWith("The scene is too plain")) {
              notes.add(sentence);
            }
          }
        },
        made);
  }

  private static Frame fresh(Frame frame) {
    Frame copy = new Frame(frame.samples());
    copy.begin(frame.number(), frame.arrivalNanos());
    copy.marks().addAll(frame.marks());
    return copy;
  }

  private static void give(Reduction reduction, Entry entry) {
    if (entry instanceof Entry.EdgeMade edge) {
      reduction.onEdge(edge.edge());
    } else if (entry instanceof Entry.ContactSwung swung) {
      reduction.onContactSwung(swung);
    } else if (entry instanceof Entry.Reading reading) {
      reduction.onReading(reading.reading());
    }
  }
}

package railglow.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.camera.Tables;
import railglow.journal.CameraFacts;
import railglow.journal.Entry;
import railglow.journal.FrameStoreReader;
import railglow.journal.Journal;
import railglow.journal.JournalReader;
import railglow.journal.RunFolder;
import railglow.journal.RunHeader;
import railglow.observed.Edge;
import railglow.observed.Frame;
import railglow.pulse.CycleWindow;
import railglow.run.reduction.DeafListener;
import railglow.run.reduction.LooksMade;
import railglow.run.reduction.Reduction;
import railglow.sim.BenchScenarios;
import railglow.thermal.HeatSource;
import railglow.thermal.Look;
import railglow.thermal.Plane;

/** One recorded run on the simulated board, replayed as if the camera's latency were another. */
@Tag("slow")
class WrongLatencyTest {
  private static final int PULSES = 24;
  private static final double[] WRONG_SECONDS = {
    0, -0.005, 0.005, -0.020, 0.020, -0.040, 0.040, -0.080, 0.080, -0.160, 0.160
  };
  @TempDir Path root;

  @Test
  void whatAWrongLatencyCostsInAReplay() throws Exception {
    RunFolder folder = ResistorRun.record(BenchScenarios.hx12().withSeed(5), PULSES, root);
    Journal journal = JournalReader.read(folder);
    Tables table =
        new Tables(
            "latency-cost-replayed",
            "latency wrong by",
            "ON minus OFF",
            "of the true one",
            "swing found",
            "of the true one",
            "standard score at its peak",
            "of the true one",
            "time constant found",
            "off its place");
    Map<Double, Double> swings = new TreeMap<>();
    Map<Double, Double> times = new TreeMap<>();
    HeatSource right = null;
    double rightScore = Double.NaN;
    double rightOnMinusOff = Double.NaN;
    for (double wrong : WRONG_SECONDS) {
      Look look = replay(folder, journal, wrong);
      HeatSource found = look.strongest();
      double score =
          look.significance().at((int) Math.round(found.column()), (int) Math.round(found.row()));
      right = right == null ? found : right;
      rightScore = Double.isNaN(rightScore) ? score : rightScore;
      double onMinusOff = around(look.inPhase(), right);
      rightOnMinusOff = Double.isNaN(rightOnMinusOff) ? onMinusOff : rightOnMinusOff;
      double part = onMinusOff / rightOnMinusOff;
      table.row(
          "%+.0f ms | %.0f mK | %.1f %% | %.0f mK | %.1f %% | %.1f | %.1f %% | %.0f ms | %.2f px",
          1e3 * wrong,
          1e3 * onMinusOff,
          100 * part,
          1e3 * found.swingKelvin(),
          100 * found.swingKelvin() / right.swingKelvin(),
          score,
          100 * score / rightScore,
          1e3 * found.timeConstantSeconds(),
          Math.hypot(found.column() - right.column(), found.row() - right.row()));
      swings.put(wrong, found.swingKelvin() / right.swingKelvin());
      times.put(wrong, found.timeConstantSeconds() / right.timeConstantSeconds());
      assertEquals(1, score / rightScore, 0.1, "seen as well: the delay is searched for");
    }
    table.write();
    for (double small : new double[] {-0.005, 0.005}) {
      assertEquals(1, swings.get(small), 0.02, "an error as the alignment leaves it");
      assertEquals(1, times.get(small), 0.15, "an error as the alignment leaves it");
    }
    assertTrue(times.get(-0.08) > 2 && times.get(0.08) < 0.5, "delays are wrong: " + times);
  }

  /** No model: the mean over what is within three pixels of the true peak. */
  private static double around(Plane plane, HeatSource peak) {
    double sum = 0;
    int count = 0;
    for (int y = -3; y <= 3; y++) {
      for (int x = -3; x <= 3; x++) {
        sum += plane.at((int) Math.round(peak.column()) + x, (int) Math.round(peak.row()) + y);
        count++;
      }
    }
    return sum / count;
  }

  private static Look replay(RunFolder folder, Journal journal, double wrongSeconds)
      throws IOException {
    List<Edge> edges = new ArrayList<>();
    for (Entry entry : journal.entries()) {
      if (entry instanceof Entry.EdgeMade made) {
        edges.add(made.edge());
      }
    }
    try (FrameStoreReader frames = FrameStoreReader.open(folder.frames())) {
      Reduction reduction =
          new Reduction(
              header(journal.header(), edges, wrongSeconds),
              frames.newSamples(),
              new DeafListener(),
              LooksMade.UNTIL_CALLED);
      edges.forEach(reduction::onEdge);
      reduction.allEdgesKnown();
      Frame frame = new Frame(frames.newSamples());
      while (frames.next(frame)) {
        reduction.onFrame(frame);
        frame = new Frame(frames.newSamples());
      }
      return reduction.finish().look();
    }
  }

  /** With a cycle around each pulse and a latency that is off. */
  private static RunHeader header(RunHeader recorded, List<Edge> edges, double wrongSeconds) {
    long period = Math.round(recorded.sequence().periodSeconds() * 1e9);
    List<CycleWindow> cycles = new ArrayList<>();
    for (Edge edge : edges) {
      if (edge.on()) {
        long on = (edge.commandedNanos() + edge.confirmedNanos()) / 2;
        long start = on - period / 4;
        cycles.add(
            new CycleWindow(
                cycles.size(),
                start,
                on,
                start + period / 2,
                start + 3 * period / 4,
                start + period));
      }
    }
    CameraFacts camera = recorded.camera();
    return new RunHeader(
        recorded.formatVersion(),
        recorded.programVersion(),
        recorded.started(),
        recorded.startNanos(),
        recorded.runId(),
        recorded.board(),
        recorded.rail(),
        recorded.sequence(),
        recorded.envelope(),
        new CameraFacts(
            camera.name(),
            camera.width(),
            camera.height(),
            camera.sampleType(),
            camera.framesPerSecond(),
            camera.kelvinPerCount(),
            camera.celsiusAtZero(),
            camera.noiseKelvin(),
            camera.latencySeconds() + wrongSeconds,
            camera.timeConstantSeconds(),
            camera.numbersAreCounted(),
            camera.timesAreExposures(),
            camera.shutterSettlingSeconds(),
            camera.saturationValue()),
        recorded.supplyIdentity(),
        recorded.leadOhms(),
        recorded.protections(),
        recorded.detection(),
        cycles,
        recorded.usedFiles(),
        recorded.commandLine());
  }
}

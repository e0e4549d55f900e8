package railglow.camera.alignment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import railglow.camera.Tables;

@Tag("slow")
class AlignmentTablesTest {
  @Test
  void onAPartOfTheSimulatedBoard() throws AlignmentRefusedException {
    Tables table =
        new Tables(
            "alignment-on-a-board",
            "seed",
            "latency",
            "stated error",
            "off the camera's",
            "off camera's and supply's");
    for (int seed = 1; seed <= 6; seed++) {
      Alignment measured = AlignmentOnBenchTest.measure(seed, 48);
      double off = AlignmentOnBenchTest.offBoth(measured);
      table.row(
          "%d | %.1f ms | %.1f ms | %+.1f ms | %+.1f ms",
          seed,
          1e3 * measured.latencySeconds(),
          1e3 * measured.latencyErrorSeconds(),
          1e3 * AlignmentOnBenchTest.offTheCameras(measured),
          1e3 * off);
      assertEquals(0, off, 0.010);
    }
    table.write();
  }

  /**
   * What remains of the in-phase part when every frame is labelled too early or too late by a fixed
   * time, with frames within 20 ms of an edge left out.
   */
  @Test
  void whatAWrongLatencyCosts() {
    Tables table =
        new Tables(
            "latency-cost",
            "latency wrong by",
            "P = 1 s, tau = 0",
            "P = 2 s, tau = 0",
            "P = 2 s, tau = 0.2 s",
            "P = 4 s, tau = 0.5 s");
    double[][] cases = {{1, 0}, {2, 0}, {2, 0.2}, {4, 0.5}};
    for (double wrong : new double[] {0, 0.005, 0.02, 0.04, 0.08, 0.16}) {
      double[] part = new double[cases.length];
      for (int k = 0; k < cases.length; k++) {
        double right = inPhase(cases[k][0], cases[k][1], 0);
        part[k] = 100 * inPhase(cases[k][0], cases[k][1], wrong) / right;
      }
      table.row(
          "%.0f ms | %.1f %% | %.1f %% | %.1f %% | %.1f %%",
          1000 * wrong, part[0], part[1], part[2], part[3]);
      assertTrue(wrong > 0 || Math.abs(part[0] - 100) < 1e-9);
    }
    table.write();
  }

  /**
   * Steady cycles of a first-order body; frames are taken to be {@code wrong} earlier than true.
   */
  private static double inPhase(double period, double tau, double wrong) {
    int steps = 40_000;
    double[] body = new double[steps];
    double decay = tau > 0 ? Math.exp(-period / steps / tau) : 0;
    double state = 0;
    for (int cycle = 0; cycle < 30; cycle++) {
      for (int i = 0; i < steps; i++) {
        double heat = i >= steps / 4 && i < 3 * steps / 4 ? 1 : 0;
        state = heat + (state - heat) * decay;
        body[i] = state;
      }
    }
    double on = 0;
    double off = 0;
    int onCount = 0;
    int offCount = 0;
    for (int i = 0; i < steps; i++) {
      double label = (double) i / steps * period;
      double fromEdge = Math.min(Math.abs(label - period / 4), Math.abs(label - 3 * period / 4));
      if (fromEdge < 0.02) {
        continue;
      }
      double value = body[Math.floorMod((int) Math.round(i - wrong / period * steps), steps)];
      if (label >= period / 4 && label < 3 * period / 4) {
        on += value;
        onCount++;
      } else {
        off += value;
        offCount++;
      }
    }
    return on / onCount - off / offCount;
  }
}

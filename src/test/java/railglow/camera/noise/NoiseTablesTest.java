package railglow.camera.noise;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import railglow.camera.FrameMarks;
import railglow.camera.RecordedFrames;
import railglow.camera.Recordings;
import railglow.camera.Tables;
import railglow.observed.Frame;

@Tag("slow")
class NoiseTablesTest {
  @Test
  void ofTheRecordings() throws IOException {
    Tables table =
        new Tables(
            "noise",
            "recording",
            "frames",
            "one pixel",
            "frame to frame",
            "next frame's correlation",
            "rows together",
            "columns together",
            "whole frame",
            "Allan deviation at 1 s",
            "best period for a body of 0.5 s");
    row(table, "a_lepton3_static_489", 8.77, 20);
    row(table, "b_lepton3_flat_102", 8.77, 20);
    row(table, "g_mlx90640_heating_400", 8, 1000);
    table.write();
  }

  private static void row(Tables table, String name, double rate, double milliKelvinPerUnit)
      throws IOException {
    try (RecordedFrames frames = Recordings.open(name)) {
      Frame frame = new Frame(frames.newSamples());
      FrameMarks marks = new FrameMarks(frames.newSamples(), rate, 1);
      PixelCensus census = new PixelCensus(frames.newSamples(), Double.POSITIVE_INFINITY);
      for (int n = 0; n < frames.count(); n++) {
        read(frames, n, frame, marks, rate);
        census.add(frame);
      }
      int width = frame.samples().width();
      int height = frame.samples().height();
      NoiseMeter meter = new NoiseMeter(width, height, rate, census.faults());
      FrameMarks again = new FrameMarks(frames.newSamples(), rate, 1);
      for (int n = 0; n < frames.count(); n++) {
        read(frames, n, frame, again, rate);
        meter.add(frame);
      }
      NoiseFigures figures = meter.figures().scaled(milliKelvinPerUnit);
      double best = BestPeriod.find(figures, 0.5, 0.5, 2 * figures.seconds() / 8);
      table.row(
          "%s | %d | %.0f mK | %.0f mK | %.2f | %.0f mK | %.0f mK | %.0f mK | %.0f mK | %.1f s",
          name.substring(0, 1),
          figures.frames(),
          figures.temporal(),
          figures.frameToFrame(),
          figures.nextFrameCorrelation(),
          figures.rowTogether(),
          figures.columnTogether(),
          figures.frameTogether(),
          figures.allanDeviationAt(1),
          best);
      assertTrue(best > 0);
    }
  }

  private static void read(RecordedFrames frames, int n, Frame frame, FrameMarks marks, double rate)
      throws IOException {
    frames.read(n, frame.samples());
    frame.begin(n, 0);
    marks.mark(frame, Math.round(n / rate * 1e9));
  }
}

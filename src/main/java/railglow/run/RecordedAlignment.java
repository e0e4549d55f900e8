package railglow.run;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import railglow.camera.ArrivalClock;
import railglow.camera.FrameMarks;
import railglow.camera.alignment.Alignment;
import railglow.camera.alignment.AlignmentRefusedException;
import railglow.camera.alignment.ResistorInView;
import railglow.camera.alignment.SupplyRise;
import railglow.journal.CameraFacts;
import railglow.journal.Entry;
import railglow.journal.FrameStoreReader;
import railglow.journal.Journal;
import railglow.journal.JournalReader;
import railglow.journal.RunFolder;
import railglow.observed.Edge;
import railglow.observed.Frame;
import railglow.observed.SupplyReading;

/** The camera's delay from a recorded run over a small resistor: a pure function of its folder. */
public final class RecordedAlignment {
  /**
   * @param alignment what was fitted
   * @param supplyRise how much of the latency is the supply's own rise
   * @param column of the resistor's warmest pixel
   * @param row likewise
   */
  public record Result(Alignment alignment, SupplyRise supplyRise, int column, int row) {}

  private RecordedAlignment() {}

  /**
   * @param timeConstantSeconds what is known of the camera's time constant beforehand
   * @throws IOException when journal or frames can't be read
   * @throws AlignmentRefusedException when the run can't tell, with what to change
   */
  public static Result of(RunFolder folder, double timeConstantSeconds)
      throws IOException, AlignmentRefusedException {
    Journal journal = JournalReader.read(folder);
    CameraFacts camera = journal.header().camera();
    List<Edge> edges = new ArrayList<>();
    List<SupplyReading> readings = new ArrayList<>();
    for (Entry entry : journal.entries()) {
      if (entry instanceof Entry.EdgeMade made && made.edge().index() >= 0) {
        edges.add(made.edge());
      } else if (entry instanceof Entry.Reading read) {
        readings.add(read.reading());
      }
    }
    ArrivalClock clock = ArrivalClock.live(camera.framesPerSecond(), 0, camera.numbersAreCounted());
    ResistorInView resistor = new ResistorInView(camera.width(), camera.height());
    try (FrameStoreReader frames = FrameStoreReader.open(folder.frames())) {
      Frame frame = new Frame(frames.newSamples());
      FrameMarks marks =
          new FrameMarks(
              frame.samples(), camera.framesPerSecond(), camera.shutterSettlingSeconds());
      int next = 0;
      while (frames.next(frame)) {
        long line = clock.midExposureNanos(frame);
        marks.mark(frame, line);
        while (next < edges.size() && edges.get(next).commandedNanos() <= frame.arrivalNanos()) {
          resistor.onEdge(edges.get(next++));
        }
        resistor.onFrame(frame, line);
      }
    }
    Alignment alignment = resistor.fit(timeConstantSeconds);
    int warmest = resistor.warmestPixel().orElseThrow();
    return new Result(
        alignment,
        SupplyRise.of(edges, readings),
        warmest % camera.width(),
        warmest / camera.width());
  }
}

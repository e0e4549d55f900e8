package railglow.run;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.LongConsumer;
import railglow.camera.RecordedFrames;
import railglow.journal.EdgeTable;
import railglow.journal.Entry;
import railglow.journal.FrameStoreWriter;
import railglow.journal.JournalWriter;
import railglow.journal.RunFolder;
import railglow.journal.RunHeader;
import railglow.journal.SampleType;
import railglow.observed.Edge;
import railglow.observed.Frame;
import railglow.observed.OutputState;
import railglow.pulse.CycleWindow;
import railglow.pulse.CyclesFromEdges;
import railglow.safety.StopCause;
import railglow.thermal.CountSamples;

/** Makes a run folder from frames recorded elsewhere and the times of the pulses. */
public final class ImportedRun {
  private ImportedRun() {}

  /**
   * The cycles that a table of edges describes.
   *
   * @throws IllegalArgumentException with a sentence when it describes none
   */
  public static List<CycleWindow> cycles(List<EdgeTable.Row> rows) {
    List<Long> on = new ArrayList<>();
    List<Long> off = new ArrayList<>();
    for (EdgeTable.Row row : rows) {
      if (row.on()) {
        on.add(row.nanos());
      } else if (!on.isEmpty()) {
        off.add(row.nanos());
      }
    }
    if (on.size() > off.size()) {
      on.remove(on.size() - 1);
    }
    if (on.isEmpty()) {
      throw new IllegalArgumentException("the table of edges holds no whole pulse");
    }
    return CyclesFromEdges.of(
        on.stream().mapToLong(Long::longValue).toArray(),
        off.stream().mapToLong(Long::longValue).toArray());
  }

  /**
   * Writes journal and frame store.
   *
   * @param header with the cycles of {@link #cycles}
   * @param nanos when each frame was taken, on the clock of the edges
   * @param onFrames told after each frame how many were written so far
   */
  public static void write(
      RunFolder folder,
      RunHeader header,
      RecordedFrames frames,
      long[] nanos,
      LongConsumer onFrames)
      throws IOException {
    Frame frame = new Frame(frames.newSamples());
    int width = frame.samples().width();
    int height = frame.samples().height();
    SampleType type =
        frame.samples() instanceof CountSamples ? SampleType.UINT16 : SampleType.FLOAT32;
    long planned = FrameStoreWriter.plannedBytes(type, width, height, frames.count());
    try (JournalWriter journal = JournalWriter.create(folder, header, planned);
        FrameStoreWriter store = FrameStoreWriter.create(folder.frames(), type, width, height)) {
      for (CycleWindow cycle : header.cycles()) {
        journal.append(made(2 * cycle.cycle(), true, cycle.onNanos()));
        journal.append(made(2 * cycle.cycle() + 1, false, cycle.offNanos()));
      }
      for (int i = 0; i < frames.count(); i++) {
        frame.begin(i, nanos[i]);
        frames.read(i, frame.samples());
        store.append(frame);
        onFrames.accept(i + 1L);
      }
      journal.append(
          new Entry.Closed(
              nanos[nanos.length - 1],
              StopCause.PROGRAMME_FINISHED,
              OutputState.UNKNOWN,
              0,
              frames.count(),
              0,
              0));
    }
  }

  private static Entry made(int index, boolean on, long nanos) {
    return new Entry.EdgeMade(new Edge(index, on, 0, nanos, nanos));
  }
}

package railglow.run;

import java.io.IOException;
import java.util.function.LongConsumer;
import railglow.journal.Entry;
import railglow.journal.FrameStoreReader;
import railglow.journal.Journal;
import railglow.journal.JournalReader;
import railglow.journal.RunFolder;
import railglow.observed.Frame;
import railglow.run.reduction.Reduced;
import railglow.run.reduction.Reduction;
import railglow.run.reduction.ReductionListener;
import railglow.thermal.Look;

/**
 * Feeds a run folder's frames, edges and readings through the same reduction as the run itself; of
 * its looks only those are made that the last depends on. A pure function of the folder.
 */
public final class Replay {
  /**
   * What came out.
   *
   * @param frames how many were read
   */
  public record Result(Journal journal, Reduced reduced, long frames) {}

  private Replay() {}

  /**
   * @param onFrames told after each frame how many were read so far
   * @throws IOException with a sentence for the operator when journal or frames can't be read
   */
  public static Result of(RunFolder folder, LongConsumer onFrames) throws IOException {
    Journal journal = JournalReader.read(folder);
    try (FrameStoreReader frames = FrameStoreReader.open(folder.frames());
        FramesAhead ahead = new FramesAhead(frames)) {
      Reduction reduction =
          new Reduction(journal.header(), frames.newSamples(), new GivesBack(ahead), false);
      for (Entry entry : journal.entries()) {
        if (entry instanceof Entry.EdgeMade edge) {
          reduction.onEdge(edge.edge());
        } else if (entry instanceof Entry.Reading reading) {
          reduction.onReading(reading.reading());
        } else if (entry instanceof Entry.ContactSwung swung) {
          reduction.onContactSwung(swung);
        }
      }
      reduction.allEdgesKnown();
      long count = 0;
      for (Frame frame = ahead.next(); frame != null; frame = ahead.next()) {
        reduction.onFrame(frame);
        onFrames.accept(++count);
      }
      return new Result(journal, reduction.finish(), count);
    }
  }

  /** With every edge known a frame is released at once. */
  private record GivesBack(FramesAhead ahead) implements ReductionListener {
    @Override
    public void onCycle(Entry.Cycle cycle) {}

    @Override
    public void onLook(Look look, long nowNanos) {}

    @Override
    public void onReleased(Frame released) {
      ahead.giveBack(released);
    }
  }
}

package railglow.run;

import java.io.IOException;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.LongConsumer;
import railglow.journal.Entry;
import railglow.journal.FrameStoreReader;
import railglow.journal.Journal;
import railglow.journal.JournalReader;
import railglow.journal.RunFolder;
import railglow.observed.Frame;
import railglow.run.reduction.LooksMade;
import railglow.run.reduction.Reduced;
import railglow.run.reduction.Reduction;
import railglow.run.reduction.ReductionListener;
import railglow.run.reduction.SeenFrame;
import railglow.thermal.Look;

/**
 * Feeds a run folder's frames, edges and readings through the same reduction as the run itself; of
 * its looks only those are made that the last depends on. Which these are is known for sure at the
 * end alone, so a run in which something is called late is replayed twice. A pure function of the
 * folder.
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
   * @param onFrames told after each frame how many were read so far, from 1 again in a second pass
   * @throws IOException with a sentence for the operator when journal or frames can't be read
   */
  public static Result of(RunFolder folder, LongConsumer onFrames) throws IOException {
    Journal journal = JournalReader.read(folder);
    // One that was to end when sure has most likely ended at its first call, which every bound
    // before it concerns.
    boolean mayEndAtCall = journal.header().sequence().untilSure();
    LooksMade made = mayEndAtCall ? LooksMade.UNTIL_CALLED : LooksMade.NOW_AND_THEN;
    Optional<Result> result = of(folder, journal, made, onFrames);
    return result.isPresent()
        ? result.get()
        : of(folder, journal, LooksMade.UNTIL_CALLED, onFrames).orElseThrow();
  }

  /** What came out with these looks; empty where others would have made a difference. */
  private static Optional<Result> of(
      RunFolder folder, Journal journal, LooksMade made, LongConsumer onFrames) throws IOException {
    try (FrameStoreReader frames = FrameStoreReader.open(folder.frames());
        Borrowed borrowed = new Borrowed()) {
      Reduction reduction = new Reduction(journal.header(), frames.newSamples(), borrowed, made);
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
      Queue<SeenFrame> seen = new ConcurrentLinkedQueue<>();
      FramesAhead ahead =
          borrowed.from(new FramesAhead(frames, frame -> seen.add(reduction.sight().see(frame))));
      long count = 0;
      while (ahead.next() != null) {
        reduction.onSeen(seen.remove());
        onFrames.accept(++count);
      }
      Reduced reduced = reduction.finish();
      return reduction.lacksLooks()
          ? Optional.empty()
          : Optional.of(new Result(journal, reduced, count));
    }
  }

  /** Gives frames back; with every edge known a frame is released at once. */
  private static final class Borrowed implements ReductionListener, AutoCloseable {
    private FramesAhead ahead;

    FramesAhead from(FramesAhead lender) {
      ahead = lender;
      return lender;
    }

    @Override
    public void onCycle(Entry.Cycle cycle) {}

    @Override
    public void onLook(Look look, long nowNanos) {}

    @Override
    public void onReleased(Frame released) {
      ahead.giveBack(released);
    }

    @Override
    public void close() {
      if (ahead != null) {
        ahead.close();
      }
    }
  }
}

package railglow.run.logging;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.LongConsumer;
import railglow.board.places.PlacePixels;
import railglow.journal.Entry;
import railglow.journal.FrameStoreReader;
import railglow.journal.Journal;
import railglow.journal.JournalReader;
import railglow.journal.RunFolder;
import railglow.journal.RunHeader;
import railglow.observed.Frame;
import railglow.thermal.Plane;

/**
 * Follows places in the recorded frames of a run again, by the same steps as the log itself: those
 * of the log, or any others, in any run that has frames. A pure function of the folder.
 */
public final class LogReplay {
  private static final int MOST_DIFFERENCES = 20;

  /**
   * What came out.
   *
   * @param followed one for each frame, in order
   * @param baseline null without any frame before the injection
   */
  public record Result(
      Journal journal, List<PlacePixels> places, List<Entry.Followed> followed, Plane baseline) {}

  private LogReplay() {}

  /** The log's own places. */
  public static Result of(RunFolder folder, LongConsumer onFrames) throws IOException {
    Journal journal = JournalReader.read(folder);
    return of(folder, journal, places(journal), onFrames);
  }

  /**
   * Any places.
   *
   * @param onFrames told after each frame how many were read so far
   * @throws IOException with a sentence for the operator when frames can't be read
   */
  public static Result of(
      RunFolder folder, Journal journal, List<PlacePixels> places, LongConsumer onFrames)
      throws IOException {
    try (FrameStoreReader frames = FrameStoreReader.open(folder.frames())) {
      Frame frame = new Frame(frames.newSamples());
      FrameFollower follower =
          new FrameFollower(
              journal.header().camera(), frame.samples(), places, baselineEnds(journal));
      List<Entry.Followed> followed = new ArrayList<>();
      while (frames.next(frame)) {
        followed.add(follower.onFrame(frame));
        onFrames.accept(followed.size());
      }
      return new Result(journal, places, followed, follower.baseline());
    }
  }

  /** The places that the journal names, with their pixels. */
  public static List<PlacePixels> places(Journal journal) {
    RunHeader header = journal.header();
    return journal
        .of(Entry.PlaceNamed.class)
        .map(
            named ->
                PlacePixels.ofRuns(
                    named.name(), named.runs(), header.camera().width(), header.camera().height()))
        .toList();
  }

  /** When the frames of the baseline end: at the start condition, else with the lead-in. */
  static long baselineEnds(Journal journal) {
    RunHeader header = journal.header();
    return journal
        .of(Entry.Marker.class)
        .filter(marker -> marker.origin() == Entry.Marker.Origin.START)
        .findFirst()
        .map(Entry.Marker::nanos)
        .orElse(header.startNanos() + Math.round(header.sequence().leadInSeconds() * 1e9));
  }

  /**
   * Where the record and the replay differ, one sentence each; empty when every bit is the same.
   */
  public static List<String> differences(Result result) {
    Map<Long, Entry.Followed> recorded = new HashMap<>();
    result.journal().of(Entry.Followed.class).forEach(e -> recorded.put(e.frame(), e));
    List<String> differences = new ArrayList<>();
    for (Entry.Followed again : result.followed()) {
      Entry.Followed was = recorded.remove(again.frame());
      if (was == null) {
        differences.add("frame " + again.frame() + " is not in the journal");
      } else if (!same(was, again)) {
        differences.add("frame " + again.frame() + " gives other values than recorded");
      }
    }
    recorded.keySet().stream()
        .sorted()
        .forEach(frame -> differences.add("frame " + frame + " is not among the stored frames"));
    return differences.size() <= MOST_DIFFERENCES
        ? differences
        : List.of(
            differences.get(0),
            "and " + (differences.size() - 1) + " more frames that are missing or differ");
  }

  private static boolean same(Entry.Followed a, Entry.Followed b) {
    return a.nanos() == b.nanos()
        && Arrays.equals(a.mean(), b.mean())
        && Arrays.equals(a.low(), b.low())
        && Arrays.equals(a.high(), b.high())
        && Arrays.equals(a.riseMean(), b.riseMean())
        && Arrays.equals(a.riseLow(), b.riseLow())
        && Arrays.equals(a.riseHigh(), b.riseHigh());
  }
}

package railglow.report;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import railglow.journal.Checksums;
import railglow.journal.Entry;
import railglow.journal.FrameStoreReader;
import railglow.journal.Journal;
import railglow.journal.JournalException;
import railglow.journal.RunFolder;
import railglow.observed.Frame;

/**
 * Whether a run folder is still what the run left: files that were changed by hand, and frames that
 * came in from another run. Stateless.
 */
final class FolderCheck {
  /** Frames wait a little before the journal begins, and come a little after it ends. */
  private static final double SLACK_SECONDS = 120;

  private FolderCheck() {}

  /** What does not belong together, one sentence each. */
  static List<String> problems(RunFolder folder, Journal journal) throws IOException {
    List<String> problems = new ArrayList<>();
    for (String name : Checksums.changed(folder)) {
      problems.add(name + " was changed after the run; what it says may be wrong.");
    }
    if (Files.isRegularFile(folder.frames())) {
      try {
        frames(folder, journal, problems);
      } catch (JournalException e) {
        problems.add(RunContents.sentence(folder, e));
      }
    }
    return problems;
  }

  private static void frames(RunFolder folder, Journal journal, List<String> problems)
      throws IOException {
    try (FrameStoreReader reader = FrameStoreReader.open(folder.frames())) {
      var camera = journal.header().camera();
      if (reader.width() != camera.width() || reader.height() != camera.height()) {
        problems.add(
            String.format(
                Locale.ROOT,
                "The frames are %d x %d, the run's camera gave %d x %d: they are of another run.",
                reader.width(),
                reader.height(),
                camera.width(),
                camera.height()));
        return;
      }
      Frame first = new Frame(reader.newSamples());
      if (!reader.next(first) || journal.entries().isEmpty()) {
        return;
      }
      long end = journal.entries().stream().mapToLong(Entry::nanos).max().orElseThrow();
      double seconds = journal.seconds(first.arrivalNanos());
      if (seconds < -SLACK_SECONDS || seconds > journal.seconds(end) + SLACK_SECONDS) {
        problems.add(
            String.format(
                Locale.ROOT,
                "The first frame arrived %.0f s after the start of a run of %.0f s: the frames are"
                    + " of another run.",
                seconds,
                journal.seconds(end)));
      }
    }
  }
}

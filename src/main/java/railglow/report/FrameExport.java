package railglow.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import railglow.journal.Entry;
import railglow.journal.Journal;
import railglow.journal.JournalException;
import railglow.journal.NpyFile;
import railglow.journal.RunFolder;
import railglow.journal.WholeFile;
import railglow.report.draw.ColourScale;
import railglow.report.draw.Paint;
import railglow.report.draw.PlaneView;
import railglow.report.draw.Png;

/**
 * Any single frame of a run's record in open formats: NPY and float TIFF in degrees Celsius, kelvin
 * or counts, as the camera has a scale, and a PNG with its colour bar. Stateless.
 */
public final class FrameExport {
  private static final double PNG_SCALE = 1.5;

  private FrameExport() {}

  /** Which frame is meant: exactly one of the three is given. */
  public sealed interface Wanted {
    /** The one nearest to a time in seconds after the start. */
    record AtTime(double seconds) implements Wanted {}

    /** The one with the camera's number. */
    record Numbered(long number) implements Wanted {}

    /** The one nearest to a mark, counted from 1. */
    record AtMark(int mark) implements Wanted {}
  }

  /**
   * Writes one frame into the run folder's {@code frames}.
   *
   * @return where, without the ending of the file
   * @throws JournalException when there is no such frame, or it can't be read
   */
  public static Path write(
      RunFolder folder, Journal journal, double millimetresPerPixel, Wanted wanted)
      throws IOException {
    try (FrameShots shots = FrameShots.open(folder, journal)) {
      FrameShots.Shot shot = shots.read(index(shots, journal, wanted));
      if (shot == null) {
        throw new JournalException(
            "the frame that was asked for, or one it leans on, is damaged; ask for one at least 64"
                + " frames later");
      }
      String name = String.format(Locale.ROOT, "frame-%06d", shot.number());
      Path stem = folder.root().resolve("frames").resolve(name);
      Files.createDirectories(stem.getParent());
      String unit = Figures.backgroundUnit(journal);
      NpyFile.write(stem.resolveSibling(name + ".npy"), shot.plane());
      TiffFile.write(
          stem.resolveSibling(name + ".tif"),
          shot.plane(),
          String.format(
              Locale.ROOT,
              "frame %d [%s] at %.3f s of run %s",
              shot.number(),
              unit.replace("\u00b0C", "degC"),
              shot.seconds(),
              journal.header().runId()),
          millimetresPerPixel);
      PlaneView view =
          PlaneView.whole(shot.plane(), ColourScale.ofRange(shot.plane(), unit), 1024, 900);
      view.scaleBar(millimetresPerPixel);
      WholeFile.write(
          stem.resolveSibling(name + ".png"), Png.of(Paint.picture(view.sketch(), PNG_SCALE)));
      return stem;
    }
  }

  private static int index(FrameShots shots, Journal journal, Wanted wanted)
      throws JournalException {
    if (shots.count() == 0) {
      throw new JournalException("frames.rgf holds no whole frame");
    }
    if (wanted instanceof Wanted.Numbered numbered) {
      int index = shots.numbered(numbered.number());
      if (index < 0) {
        throw new JournalException(
            "there is no frame "
                + numbered.number()
                + " in the record; it holds "
                + shots.count()
                + " frames from "
                + shots.number(0)
                + " to "
                + shots.number(shots.count() - 1));
      }
      return index;
    }
    double seconds =
        wanted instanceof Wanted.AtMark mark
            ? marked(journal, mark.mark())
            : ((Wanted.AtTime) wanted).seconds();
    double first = shots.seconds(0);
    double last = shots.seconds(shots.count() - 1);
    if (!(seconds >= first - 1 && seconds <= last + 1)) {
      throw new JournalException(
          String.format(
              Locale.ROOT,
              "there is no frame at %.2f s: the record's frames are from %.2f s to %.2f s",
              seconds,
              first,
              last));
    }
    return shots.nearest(seconds);
  }

  private static double marked(Journal journal, int mark) throws JournalException {
    List<Entry.Marker> marks = journal.of(Entry.Marker.class).toList();
    if (mark < 1 || mark > marks.size()) {
      throw new JournalException(
          "there is no mark " + mark + " in the record; it holds " + marks.size());
    }
    return journal.seconds(marks.get(mark - 1).nanos());
  }
}

package railglow.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import railglow.board.Board;
import railglow.board.places.PlacePixels;
import railglow.journal.CameraFacts;
import railglow.journal.Journal;
import railglow.journal.RunFolder;
import railglow.journal.WholeFile;
import railglow.report.FrameExport;
import railglow.report.PlaceTable;
import railglow.report.Placement;
import railglow.run.logging.LogReplay;
import railglow.units.Quantity;
import railglow.units.QuantityException;
import railglow.units.Unit;

/** Single frames and later places out of a run's record, as a user names them. */
final class FrameChoice {
  private static final Pattern NUMBER = Pattern.compile("#(\\d{1,15})");
  private static final Pattern MARK = Pattern.compile("mark\\s*(\\d{1,6})");

  private FrameChoice() {}

  static void export(
      Terminal terminal,
      RunFolder folder,
      Journal journal,
      Placement placement,
      List<String> wanted)
      throws IOException, UserMistake {
    for (String text : wanted) {
      Path stem = FrameExport.write(folder, journal, placement.millimetresPerPixel(), wanted(text));
      terminal.say("Frame      " + stem + ".npy, .tif, .png");
    }
  }

  /** Where a user names a frame. */
  static FrameExport.Wanted wanted(String text) throws UserMistake {
    Matcher number = NUMBER.matcher(text.strip());
    if (number.matches()) {
      return new FrameExport.Wanted.Numbered(Long.parseLong(number.group(1)));
    }
    Matcher mark = MARK.matcher(text.strip());
    if (mark.matches()) {
      return new FrameExport.Wanted.AtMark(Integer.parseInt(mark.group(1)));
    }
    return new FrameExport.Wanted.AtTime(seconds(text));
  }

  static double seconds(String text) throws UserMistake {
    try {
      return Quantity.parse(text, Unit.SECOND);
    } catch (QuantityException e) {
      throw new UserMistake(
          "'"
              + text
              + "' names no frame: write a time ('12.5 s'), a number ('#310') or a mark ('mark 2'); "
              + e.getMessage());
    }
  }

  /** Follows places through the recorded frames of any run. */
  static void follow(
      Terminal terminal, RunFolder folder, Journal journal, Board board, List<String> texts)
      throws IOException, UserMistake {
    if (texts.isEmpty()) {
      return;
    }
    CameraFacts camera = journal.header().camera();
    List<PlacePixels> places =
        PlaceOption.pixels(PlaceOption.parse(texts, board), board, camera.width(), camera.height());
    Progress progress = new Progress(terminal, "frames read");
    LogReplay.Result result = LogReplay.of(folder, journal, places, progress::at);
    progress.end();
    Path table = folder.root().resolve("places-added.csv");
    WholeFile.write(
        table,
        PlaceTable.csv(journal, places.stream().map(PlacePixels::name).toList(), result.followed())
            .getBytes(StandardCharsets.UTF_8));
    terminal.say("Table      " + table);
  }
}

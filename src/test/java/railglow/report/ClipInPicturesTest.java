package railglow.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import railglow.board.Board;
import railglow.board.Entered;
import railglow.config.BoardFile;
import railglow.report.draw.Shape;
import railglow.report.draw.Sketch;
import railglow.thermal.Plane;

class ClipInPicturesTest {
  private static Board board(String... clips) throws Exception {
    return BoardFile.read(Path.of("docs/examples/hx12/board.yaml"))
        .with(new Entered(OptionalDouble.empty(), OptionalDouble.empty(), List.of(clips)))
        .board();
  }

  @Test
  void whatAClipHoldsIsMarkedInTheThermalPictureWhereTheBoardShowsIt() throws Exception {
    Placement placement = Placement.of(board("C9", "point 70 mm, 26 mm"), "3V3");
    assertEquals(2, placement.clips().size());
    PartMark point = placement.clips().get(1);
    assertEquals(148, point.column(), 0.5);
    assertEquals(124, point.row(), 0.5);
    DifferencePicture picture =
        new DifferencePicture(
            new Plane(256, 192), "K", List.of(), List.of(), placement, new Texts(Locale.ENGLISH));
    assertEquals(2, labelledClip(picture.whole()));
  }

  @Test
  void withoutAClipNothingIsMarked() throws Exception {
    assertEquals(0, Placement.of(board(), "3V3").clips().size());
  }

  private static long labelledClip(Sketch sketch) {
    return sketch.shapes().stream()
        .filter(shape -> shape instanceof Shape.Text text && text.text().equals("clip"))
        .count();
  }
}

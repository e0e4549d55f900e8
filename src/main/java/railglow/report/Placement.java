package railglow.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import railglow.board.Board;
import railglow.board.Clip;
import railglow.board.Part;
import railglow.board.geometry.Outline;
import railglow.board.geometry.PixelPosition;
import railglow.board.geometry.Registration;

/**
 * What the report knows of where parts are in the thermal picture.
 *
 * @param parts their outlines in pixels
 * @param clips outlines of what clips or probes held, named by it
 * @param millimetresPerPixel in the middle of the picture; NaN when not registered
 * @param board with its registration; empty when not known
 */
public record Placement(
    List<PartMark> parts, List<PartMark> clips, double millimetresPerPixel, Optional<Board> board) {
  public static final Placement NONE =
      new Placement(List.of(), List.of(), Double.NaN, Optional.empty());

  public Placement {
    parts = List.copyOf(parts);
    clips = List.copyOf(clips);
  }

  /**
   * The parts on the side in view, as the board's registration puts them into the picture.
   *
   * @param board null when there is none
   * @param rail the injected rail; empty when not named
   */
  public static Placement of(Board board, String rail) {
    if (board == null || board.registration().isEmpty()) {
      return NONE;
    }
    Registration registration = board.registration().get();
    List<PartMark> marks = new ArrayList<>();
    for (Part part : board.parts()) {
      if (part.side() == board.viewed()) {
        marks.add(
            mark(part.reference(), Board.outline(part), registration, board.isOn(part, rail)));
      }
    }
    List<PartMark> clips = new ArrayList<>();
    for (Clip clip : board.care().clips()) {
      clips.add(mark(clip.name(), clip.outline(), registration, true));
    }
    double pixels =
        registration.pixelsPerMillimetre(
            board.widthMillimetres() / 2, board.heightMillimetres() / 2);
    return new Placement(marks, clips, 1 / pixels, Optional.of(board));
  }

  private static PartMark mark(
      String name, Outline outline, Registration registration, boolean onRail) {
    double[] corners = outline.corners();
    double[] columns = new double[corners.length / 2];
    double[] rows = new double[corners.length / 2];
    for (int i = 0; i < columns.length; i++) {
      PixelPosition pixel = registration.toPixel(corners[2 * i], corners[2 * i + 1]);
      columns[i] = pixel.column();
      rows[i] = pixel.row();
    }
    return new PartMark(name, onRail, columns, rows);
  }
}

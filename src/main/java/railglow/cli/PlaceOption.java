package railglow.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import railglow.board.Board;
import railglow.board.SurfaceWords;
import railglow.board.places.Place;
import railglow.board.places.PlacePixels;
import railglow.board.places.PlaceReader;
import railglow.camera.CameraProfile;

/** Places as they are typed behind {@code --place}. */
final class PlaceOption {
  private PlaceOption() {}

  /**
   * @param board null when there is none
   */
  static List<Place> parse(List<String> texts, Board board) throws UserMistake {
    List<Place> places = new ArrayList<>();
    try {
      for (String text : texts) {
        places.add(PlaceReader.parse(text, board));
      }
    } catch (IllegalArgumentException e) {
      throw new UserMistake(e.getMessage());
    }
    return places;
  }

  /** Refuses a board whose reflector the camera can't see. */
  static void checkReflector(Board board, CameraProfile camera) throws UserMistake {
    try {
      SurfaceWords.checkReflector(board, camera.width(), camera.height());
    } catch (IllegalArgumentException e) {
      throw new UserMistake(e.getMessage());
    }
  }

  /** Their pixels in a picture; a name that is there twice is refused. */
  static List<PlacePixels> pixels(List<Place> places, Board board, int width, int height)
      throws UserMistake {
    List<PlacePixels> pixels = new ArrayList<>();
    TreeSet<String> names = new TreeSet<>(String.CASE_INSENSITIVE_ORDER);
    try {
      for (Place place : places) {
        if (!names.add(place.name())) {
          throw new UserMistake("there are two places called '" + place.name() + "'");
        }
        pixels.add(
            PlacePixels.of(
                place, Optional.ofNullable(board).flatMap(Board::registration), width, height));
      }
    } catch (IllegalArgumentException e) {
      throw new UserMistake(e.getMessage());
    }
    return pixels;
  }
}

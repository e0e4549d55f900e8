package railglow.board;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import railglow.board.places.ClipReader;
import railglow.units.Quantity;
import railglow.units.Unit;

/**
 * What the operator entered about a run beside its files: it holds for the visit, not for the kind
 * of board. Immutable.
 *
 * @param reflectedCelsius what the board mirrors
 * @param reflectedSigmaKelvin how well that is known
 * @param clips where clips or probes sit, as typed
 */
public record Entered(
    OptionalDouble reflectedCelsius, OptionalDouble reflectedSigmaKelvin, List<String> clips) {
  public static final Entered NOTHING =
      new Entered(OptionalDouble.empty(), OptionalDouble.empty(), List.of());

  /** Colder or hotter than this nothing around a bench is. */
  public static final double COLDEST_REFLECTED_CELSIUS = -50;

  public static final double HOTTEST_REFLECTED_CELSIUS = 100;
  public static final double MOST_REFLECTED_SIGMA_KELVIN = 50;

  public Entered {
    clips = List.copyOf(clips);
  }

  /** Each part by itself: the comparison of whole records is made when first used (0110). */
  public boolean isNothing() {
    return reflectedCelsius.isEmpty() && reflectedSigmaKelvin.isEmpty() && clips.isEmpty();
  }

  /** This, with what was entered later in the place of what it corrects. */
  public Entered correctedBy(Entered later) {
    boolean reflects = later.reflectedCelsius.isPresent();
    return new Entered(
        reflects ? later.reflectedCelsius : reflectedCelsius,
        reflects || later.reflectedSigmaKelvin.isPresent()
            ? later.reflectedSigmaKelvin
            : reflectedSigmaKelvin,
        later.clips.isEmpty() ? clips : later.clips);
  }

  /**
   * The board with it: what is entered goes before what the board file states or a foil shows.
   *
   * @throws IllegalArgumentException with one sentence that says what is wrong and what is right
   */
  public Board on(Board board) {
    BoardCare care = board.care();
    if (reflectedCelsius.isPresent()) {
      inRange(
          "--reflected",
          reflectedCelsius.getAsDouble(),
          COLDEST_REFLECTED_CELSIUS,
          HOTTEST_REFLECTED_CELSIUS,
          Unit.CELSIUS);
      double sigma = reflectedSigmaKelvin.orElse(BoardSurfaces.USUAL.reflectedSigmaKelvin());
      inRange("--reflected-error", sigma, 0, MOST_REFLECTED_SIGMA_KELVIN, Unit.KELVIN);
      care = care.withSurfaces(care.surfaces().entered(reflectedCelsius.getAsDouble(), sigma));
    } else if (reflectedSigmaKelvin.isPresent()) {
      throw new IllegalArgumentException(
          "--reflected-error is the error of --reflected: give both, for example --reflected \"24"
              + " degC\" --reflected-error \"2 K\"");
    }
    List<Clip> read = new ArrayList<>();
    for (String clip : clips) {
      read.add(ClipReader.parse(clip, board));
    }
    return board.withCare(read.isEmpty() ? care : care.withClips(read));
  }

  private static void inRange(String name, double value, double low, double high, Unit unit) {
    if (!(value >= low && value <= high)) {
      throw new IllegalArgumentException(
          name
              + " is "
              + Quantity.format(value, unit)
              + "; allowed is "
              + Quantity.format(low, unit)
              + " to "
              + Quantity.format(high, unit));
    }
  }
}

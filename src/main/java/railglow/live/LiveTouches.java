package railglow.live;

import java.util.List;

/**
 * The points of a hands-free session so far.
 *
 * @param rows in order
 * @param conclusions sentences that compare them; empty while there is nothing to compare
 */
public record LiveTouches(List<Row> rows, List<String> conclusions) {
  public static final LiveTouches NONE = new LiveTouches(List.of(), List.of());

  public LiveTouches {
    rows = List.copyOf(rows);
    conclusions = List.copyOf(conclusions);
  }

  /**
   * One point, in words and numbers with their units.
   *
   * @param point number and label
   * @param found what was found there
   * @param power to the source
   * @param contact what lay in the way
   */
  public record Row(String point, String found, String power, String contact) {}
}

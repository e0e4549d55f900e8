package railglow.run.handsfree;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Short names for touches that are told apart when spoken.
 *
 * @param words in the order they are given out; afterwards they begin again with a number
 */
public record TouchLabels(List<String> words) {
  /** No two begin alike, none rhymes with another. */
  public static final TouchLabels USUAL =
      new TouchLabels(
          List.of(
              "amber", "birch", "cedar", "dune", "ember", "fjord", "garnet", "hazel", "iris",
              "juniper", "kelp", "lupin", "maple", "nickel", "ochre", "pebble", "quartz", "rowan",
              "slate", "tulip", "umber", "violet", "walnut", "yarrow", "zinc"));

  private static final int LONGEST = 24;
  private static final String NUMBERS = "numbers";
  private static final int MOST_NUMBERED = 99;

  /**
   * @throws IllegalArgumentException with a sentence when a word can't be used
   */
  public TouchLabels {
    words = List.copyOf(words);
    Set<String> seen = new HashSet<>();
    for (String word : words) {
      checked(word);
      if (!seen.add(word)) {
        throw new IllegalArgumentException("the label '" + word + "' is there twice");
      }
    }
    if (words.isEmpty()) {
      throw new IllegalArgumentException("at least one label is wanted");
    }
  }

  /**
   * The word itself.
   *
   * @throws IllegalArgumentException with a sentence when it can't be a label
   */
  static String checked(String word) {
    if (word.isBlank() || word.length() > LONGEST || !word.equals(word.strip())) {
      throw new IllegalArgumentException(
          "'" + word + "' can't be a label: 1 to " + LONGEST + " characters are wanted");
    }
    return word;
  }

  /** A list as typed, with commas between; {@code numbers} for points that are only counted. */
  public static TouchLabels parse(String text) {
    if (text.strip().equals(NUMBERS)) {
      return new TouchLabels(
          IntStream.rangeClosed(1, MOST_NUMBERED).mapToObj(i -> "point-" + i).toList());
    }
    return new TouchLabels(List.of(text.split(",", -1)).stream().map(String::strip).toList());
  }

  /**
   * @param touch from 1
   */
  public String of(int touch) {
    int round = (touch - 1) / words.size();
    String word = words.get((touch - 1) % words.size());
    return round == 0 ? word : word + "-" + (round + 1);
  }
}

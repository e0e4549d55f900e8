package railglow.config;

import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;

/** Finds the key a user probably meant. */
final class KnownKeys {
  private static final int MAX_DISTANCE = 2;

  private KnownKeys() {}

  /** "; did you mean 'x'?", or the list of what is known. */
  static String hint(String written, Collection<String> known) {
    Optional<String> nearest =
        known.stream()
            .min(Comparator.comparingInt(key -> distance(written, key)))
            .filter(key -> distance(written, key) <= MAX_DISTANCE);
    if (nearest.isPresent()) {
      return "; did you mean '" + nearest.get() + "'?";
    }
    return known.isEmpty() ? "" : "; known are " + String.join(", ", known);
  }

  /** Levenshtein's edit distance. */
  static int distance(String a, String b) {
    int[] previous = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      previous[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int[] current = new int[b.length() + 1];
      current[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int substitute = previous[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        current[j] = Math.min(substitute, 1 + Math.min(previous[j], current[j - 1]));
      }
      previous = current;
    }
    return previous[b.length()];
  }
}

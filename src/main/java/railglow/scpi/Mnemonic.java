package railglow.scpi;

import java.util.Locale;

/**
 * A keyword with its two legal spellings, short and long; nothing between them is legal (SCPI-1999
 * volume 1, 6.2.1).
 *
 * @param shortForm upper case
 * @param longForm upper case, starts with the short form
 */
public record Mnemonic(String shortForm, String longForm) {

  /**
   * @param written as manuals print it: the short form in capitals, the rest small: {@code VOLTage}
   * @throws IllegalArgumentException if it is not such a word of at most 12 characters
   */
  public static Mnemonic of(String written) {
    int capitals = 0;
    while (capitals < written.length() && !Character.isLowerCase(written.charAt(capitals))) {
      capitals++;
    }
    if (!written.matches("[A-Z][A-Z0-9_]*[a-z0-9_]*") || written.length() > Cursor.MAX_NAME) {
      throw new IllegalArgumentException("'" + written + "' is not a keyword like 'VOLTage'");
    }
    return new Mnemonic(written.substring(0, capitals), written.toUpperCase(Locale.ROOT));
  }

  /**
   * The short form the rule gives for a word: four letters, or three if the fourth is a vowel and
   * the word is longer than four.
   */
  public static String shorten(String word) {
    String upper = word.toUpperCase(Locale.ROOT);
    if (upper.length() <= 4) {
      return upper;
    }
    return upper.substring(0, "AEIOU".indexOf(upper.charAt(3)) >= 0 ? 3 : 4);
  }

  /** Whether a word, in any case, is one of the two spellings. */
  public boolean matches(String word) {
    return word.equalsIgnoreCase(shortForm) || word.equalsIgnoreCase(longForm);
  }
}

package railglow.casebook;

import java.time.Instant;
import java.util.List;

/**
 * What to look for in a catalogue; an empty text or list and a null time ask for nothing.
 *
 * @param board a part of its name, any case
 * @param rail its name, any case
 * @param part a suspect's reference, any case
 * @param verdict as in {@link RunSummary#verdict()}
 * @param from started at or after
 * @param until started before
 * @param words all must be there, any case
 * @param most at most so many, newest first
 */
public record RunSearch(
    String board,
    String rail,
    String part,
    String verdict,
    Instant from,
    Instant until,
    List<String> words,
    int most) {
  public static final RunSearch ALL = new RunSearch("", "", "", "", null, null, List.of(), 50);

  public RunSearch {
    words = List.copyOf(words);
  }
}

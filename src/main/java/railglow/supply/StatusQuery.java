package railglow.supply;

import java.util.Map;

/**
 * One status query and what its reply means. Either bits of a number or whole words; the other map
 * is empty.
 *
 * @param query template
 * @param bits meaning by bit number, from 0
 * @param words meaning by reply text, compared without case; words not listed mean nothing
 */
public record StatusQuery(
    String query, Map<Integer, StatusMeaning> bits, Map<String, StatusMeaning> words) {
  public StatusQuery {
    bits = Map.copyOf(bits);
    words = Map.copyOf(words);
  }
}

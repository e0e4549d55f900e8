package railglow.board;

import java.util.List;

/**
 * What else to read when a rail or a part is found wrong.
 *
 * @param when the rail or part found wrong
 * @param read the rails to read too
 * @param why one sentence
 */
public record RelatedCheck(String when, List<String> read, String why) {
  public RelatedCheck {
    read = List.copyOf(read);
  }
}

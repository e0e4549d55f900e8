package railglow.scpi;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The commands an instrument knows, each with what is to be done. Filled once, then only read.
 *
 * @param <T> what belongs to a header
 */
public final class HeaderTable<T> {
  private record Row<T>(HeaderPattern pattern, T value) {}

  /**
   * A command found in the table.
   *
   * @param numbers of the numbered nodes, see {@link HeaderPattern#match}
   */
  public record Found<T>(T value, List<Integer> numbers) {}

  private final List<Row<T>> rows = new ArrayList<>();

  /** Adds a header; the first of two that match wins. */
  public HeaderTable<T> add(String pattern, T value) {
    rows.add(new Row<>(HeaderPattern.of(pattern), value));
    return this;
  }

  /**
   * @throws ScpiException -113 if no header of the table matches
   */
  public Found<T> find(Command command) throws ScpiException {
    for (Row<T> row : rows) {
      Optional<List<Integer>> numbers = row.pattern().match(command);
      if (numbers.isPresent()) {
        return new Found<>(row.value(), numbers.get());
      }
    }
    throw new ScpiException(
        ScpiError.UNDEFINED_HEADER,
        command.position(),
        "there is no command " + Quoted.of(command.headerText()));
  }
}

package railglow.board.imports;

import java.util.List;

/**
 * What a placement file says.
 *
 * @param parts in the file's order, each reference once
 * @param notes what was found out or assumed while reading, one sentence each
 */
public record Placement(List<PlacedPart> parts, List<String> notes) {
  public Placement {
    parts = List.copyOf(parts);
    notes = List.copyOf(notes);
  }
}

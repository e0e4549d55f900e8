package railglow.board;

import java.util.Collection;
import java.util.List;

/**
 * What the board file says beyond places and nets, and where the clips of a run sit. Immutable.
 *
 * @param partLimits delicate parts
 * @param relatedChecks what else to read
 * @param surfaces emissivity by area and kind
 * @param plate what spreads the heat
 * @param clips where the current goes in and out; empty when that was not said
 */
public record BoardCare(
    List<PartLimit> partLimits,
    List<RelatedCheck> relatedChecks,
    BoardSurfaces surfaces,
    BoardPlate plate,
    List<Clip> clips) {
  public static final BoardCare NONE =
      new BoardCare(List.of(), List.of(), BoardSurfaces.USUAL, BoardPlate.USUAL, List.of());

  public BoardCare {
    partLimits = List.copyOf(partLimits);
    relatedChecks = List.copyOf(relatedChecks);
    clips = List.copyOf(clips);
  }

  /**
   * What else to read.
   *
   * @param wrong rails and parts that were found wrong; rails whatever their case
   */
  public List<RelatedCheck> checksFor(Collection<String> wrong) {
    return relatedChecks.stream()
        .filter(check -> wrong.stream().anyMatch(name -> name.equalsIgnoreCase(check.when())))
        .toList();
  }

  BoardCare withSurfaces(BoardSurfaces other) {
    return new BoardCare(partLimits, relatedChecks, other, plate, clips);
  }

  BoardCare withClips(List<Clip> other) {
    return new BoardCare(partLimits, relatedChecks, surfaces, plate, other);
  }
}

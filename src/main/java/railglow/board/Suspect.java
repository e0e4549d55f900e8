package railglow.board;

/**
 * A part that can explain a heat source.
 *
 * @param sourceIndex which heat source of the run it explains, from 0
 * @param part its reference
 * @param rank 1 is the first to look at
 * @param distanceMillimetres from the source's position to the part's outline; 0 when inside
 * @param distanceSigmas the same in standard deviations of the position
 * @param onRail whether one of its pads is on the injected net
 * @param reason one plain sentence
 */
public record Suspect(
    int sourceIndex,
    String part,
    int rank,
    double distanceMillimetres,
    double distanceSigmas,
    boolean onRail,
    String reason) {}

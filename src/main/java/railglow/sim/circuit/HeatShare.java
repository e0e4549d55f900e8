package railglow.sim.circuit;

/**
 * One resistance of a branch and the place its heat goes to.
 *
 * @param place a part's reference
 * @param ohms at least 0
 */
public record HeatShare(String place, double ohms) {}

package railglow.casebook;

/**
 * How often a part was the first suspect among the runs of a board's rail that found heat.
 *
 * @param count runs with this part
 * @param all runs of that rail that found heat
 */
public record FaultCount(String rail, String part, int count, int all) {}

package railglow.sim.truth;

import java.util.Map;

/**
 * One thing that truly happened.
 *
 * @param nanos on the bench's clock; with the machine's own monotonic clock it is the same in every
 *     process of the machine
 * @param kind what it was
 * @param facts name with unit to value, in order
 */
public record TruthEvent(long nanos, Kind kind, Map<String, Object> facts) {
  /** The kinds of entries. */
  public enum Kind {
    /** The bench began: scenario, seed, geometry. */
    BENCH,
    /** Where a part at fault is in the picture. */
    SOURCE,
    /** Current could begin or ceased to flow: the true output switch. */
    OUTPUT,
    /** A protection of the supply acted. */
    TRIP,
    /** A command line arrived; questions are not listed. */
    RECEIVED,
    /** The true current passed the watched value upwards. */
    CURRENT_ABOVE,
    /** A frame was exposed: volts, amperes, watts and rises at that time. */
    FRAME,
    /** The hand did something. */
    HAND
  }

  public TruthEvent {
    facts = java.util.Collections.unmodifiableMap(new java.util.LinkedHashMap<>(facts));
  }

  /** A number among the facts; NaN when it is not there. */
  public double number(String name) {
    return facts.get(name) instanceof Number number ? number.doubleValue() : Double.NaN;
  }
}

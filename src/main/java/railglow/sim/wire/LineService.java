package railglow.sim.wire;

/** Whoever answers lines: the supply with its world. May be called from several threads. */
@FunctionalInterface
public interface LineService {
  /**
   * @param line without its terminator
   * @return the answer; null when nothing was asked
   */
  String receive(String line, long nowNanos);
}

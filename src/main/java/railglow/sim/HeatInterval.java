package railglow.sim;

import java.util.Map;

/**
 * What the electrical side of a bench hands to its picture side: the heat up to a frame's exposure,
 * up to a command between two frames after which the heating may be another one, or of the longest
 * time in which it is taken for even.
 *
 * @param joules by place
 */
record HeatInterval(
    long nanos,
    boolean endsAtFrame,
    Map<String, Double> joules,
    double volts,
    double amperes,
    boolean on) {
  void addTo(Map<String, Double> sums) {
    joules.forEach((place, added) -> sums.merge(place, added, Double::sum));
  }
}

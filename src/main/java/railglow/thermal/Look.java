package railglow.thermal;

import java.util.List;
import java.util.function.DoubleFunction;

/**
 * What one look at the data so far says. The planes are owned by the receiver.
 *
 * @param cycles how many cycles it rests on
 * @param sources those with a family-wise p at or below the run's error, strongest first
 * @param refused what follows the pulse just as clearly, but not as heat does, strongest first
 * @param strongest the strongest candidate whether significant or not; null when there is none that
 *     could be heat
 * @param upperLimitKelvin a source that swings by this, as wide as the narrowest filter or wider,
 *     on whichever line, would have been called by now with 95 % probability
 * @param inPhase mean ON minus OFF, row and column parts removed
 * @param quadrature mean slow part, likewise
 * @param significance the field of the detection statistic as a standard normal score
 * @param oneLag what one first-order lag of a time constant, s, shows in the two mean planes, by
 *     the frames that they were made of; as a share of its settled rise
 */
public record Look(
    int cycles,
    List<HeatSource> sources,
    List<RefusedSource> refused,
    HeatSource strongest,
    double upperLimitKelvin,
    Plane inPhase,
    Plane quadrature,
    Plane significance,
    DoubleFunction<FirstOrderResponse> oneLag) {
  public Look {
    sources = List.copyOf(sources);
    refused = List.copyOf(refused);
  }

  /** A look that refused nothing. */
  public Look(
      int cycles,
      List<HeatSource> sources,
      HeatSource strongest,
      double upperLimitKelvin,
      Plane inPhase,
      Plane quadrature,
      Plane significance,
      DoubleFunction<FirstOrderResponse> oneLag) {
    this(
        cycles,
        sources,
        List.of(),
        strongest,
        upperLimitKelvin,
        inPhase,
        quadrature,
        significance,
        oneLag);
  }
}

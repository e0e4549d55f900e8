package railglow.thermal;

import java.util.List;

/**
 * A candidate that was fitted.
 *
 * @param stop what stopping by it does to its score
 * @param direction of its width's arc in which it is strongest
 * @param others that were taken out of the picture for the fit
 */
record FoundSource(
    Candidate candidate,
    double familyWiseP,
    EarlyStop stop,
    int direction,
    GaussianFit fit,
    Blob blob,
    List<Blob> others) {

  /** The same with another family-wise p. */
  FoundSource with(double p) {
    return new FoundSource(candidate, p, stop, direction, fit, blob, others);
  }
}

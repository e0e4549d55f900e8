package railglow.thermal;

import java.util.List;

/**
 * A candidate that was fitted.
 *
 * @param stopShare what is left of its score when it stopped the run
 * @param direction of its width's arc in which it is strongest
 * @param others that were taken out of the picture for the fit
 */
record FoundSource(
    Candidate candidate,
    double familyWiseP,
    double stopShare,
    int direction,
    GaussianFit fit,
    Blob blob,
    List<Blob> others) {

  /** The same with another family-wise p. */
  FoundSource with(double p) {
    return new FoundSource(candidate, p, stopShare, direction, fit, blob, others);
  }
}

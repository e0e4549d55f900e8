package railglow.thermal;

/**
 * A candidate that was fitted.
 *
 * @param stopShare what is left of its score when it stopped the run
 * @param direction of its width's arc in which it is strongest
 */
record FoundSource(
    Candidate candidate,
    double familyWiseP,
    double stopShare,
    int direction,
    GaussianFit fit,
    Blob blob) {

  /** The same with another family-wise p. */
  FoundSource with(double p) {
    return new FoundSource(candidate, p, stopShare, direction, fit, blob);
  }
}

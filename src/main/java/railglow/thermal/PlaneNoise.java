package railglow.thermal;

/** The noise of a plane of differences, most of whose pixels show no source. Pure. */
public final class PlaneNoise {
  private PlaneNoise() {}

  /** Robust standard deviation about zero (1.4826 times the median of the magnitudes). */
  public static double sigma(Plane plane) {
    return CommonParts.robustSigma(plane.values(), null);
  }
}

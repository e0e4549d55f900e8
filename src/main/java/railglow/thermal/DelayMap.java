package railglow.thermal;

/**
 * How late each pixel follows the pulse: heat spreads, so the source is early and what was merely
 * heated by it is late. Pure function of a look's mean planes.
 */
public final class DelayMap {
  private DelayMap() {}

  /**
   * Angle of (in-phase, quadrature) in radians, 0 for a pixel that follows at once, growing with
   * its lag; NaN where the smoothed signal is below the given multiple of its own noise.
   *
   * @param sigmaPixels of the Gaussian the planes are smoothed with first; wider is steadier and
   *     blurs neighbours into one another
   * @param leastScore at which an angle is worth stating, for example 4 (its error is then about
   *     1/4 rad)
   */
  public static Plane of(Plane inPhase, Plane quadrature, double sigmaPixels, double leastScore) {
    int width = inPhase.width();
    int height = inPhase.height();
    MatchedFilter filter = new MatchedFilter(width, height, sigmaPixels);
    float[] i = new float[width * height];
    float[] c = new float[width * height];
    filter.apply(inPhase.values(), i);
    filter.apply(quadrature.values(), c);
    double noiseI = CommonParts.robustSigma(i, null);
    double noiseC = CommonParts.robustSigma(c, null);
    float[] angle = new float[i.length];
    for (int p = 0; p < angle.length; p++) {
      boolean clear =
          Math.hypot(i[p] / noiseI, c[p] / noiseC) >= leastScore && noiseI > 0 && noiseC > 0;
      angle[p] = clear ? (float) Math.atan2(c[p], i[p]) : Float.NaN;
    }
    return new Plane(width, height, angle);
  }
}

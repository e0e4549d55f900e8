package railglow.thermal;

import java.util.Arrays;
import java.util.Optional;

/**
 * Reduces quarter means to channels and takes the drift out of them to second order.
 *
 * <p>With time in periods, a slope s adds s/2 to the quadrature and nothing in phase; a curvature q
 * t^2 adds -q/8 in phase and nothing to the quadrature. Both come from the cycle means of the
 * neighbours, which a periodic signal leaves unchanged. A cycle is therefore final only when the
 * next one is there; until then it has a provisional form with a one-sided slope. Where the times
 * of the frames are known, so is how far they are from the middles of the quarters, which the
 * slope's part goes by ({@link DriftPart}). The first cycle has no neighbour before it: its slope
 * and that of the second are both taken from the difference of the two, which is right for their
 * sum even where a board begins to warm, and the second takes out the curvature of both. A gap in
 * the cycle numbers (a rejected cycle, perhaps a shutter event with a new pattern) is never
 * bridged.
 *
 * <p>For white noise of variance v per channel and cycle the slope costs v/32 and the curvature
 * 0.006 v within a cycle, and nearly nothing in the mean, where the corrections telescope. Not
 * thread-safe.
 */
final class DriftFreeCycles {
  private int lastCycle = Integer.MIN_VALUE;
  private float[] inPhase;
  private float[] quadrature;
  private float[] mean;
  private float[] meanBefore;
  private boolean beforeIsFirst;
  private DriftPart part = DriftPart.OF_WHOLE_QUARTERS;
  private DriftPart partBefore = part;
  private boolean[] alive;

  /** Takes the next cycle; gives the one before it in its final form, if there is one. */
  Optional<ReducedCycle> next(QuarterMeans q) {
    if (q.cycle() <= lastCycle) {
      throw new IllegalArgumentException(
          "cycle " + q.cycle() + " came after cycle " + lastCycle + "; cycles must ascend");
    }
    float[] newMean = new float[q.q1().values().length];
    float[] newInPhase = new float[newMean.length];
    float[] newQuadrature = new float[newMean.length];
    reduce(q, newInPhase, newQuadrature, newMean);
    noteLife(newInPhase, newQuadrature);
    DriftPart newPart = DriftPart.of(q.times());
    boolean adjacent = mean != null && q.cycle() == lastCycle + 1;
    Optional<ReducedCycle> finished =
        mean == null
            ? Optional.empty()
            : Optional.of(corrected(adjacent ? newMean : null, newPart));
    beforeIsFirst = adjacent && meanBefore == null;
    meanBefore = adjacent ? mean : null;
    partBefore = part;
    part = newPart;
    mean = newMean;
    inPhase = newInPhase;
    quadrature = newQuadrature;
    lastCycle = q.cycle();
    return finished;
  }

  private void noteLife(float[] newInPhase, float[] newQuadrature) {
    if (alive == null) {
      alive = new boolean[newInPhase.length];
    }
    for (int p = 0; p < alive.length; p++) {
      alive[p] |= Math.abs(newInPhase[p]) + Math.abs(newQuadrature[p]) > 0;
    }
  }

  /** Which pixels changed at least once within a cycle; the array itself, null without cycles. */
  boolean[] alive() {
    return alive;
  }

  /** The last cycle with what is known so far; empty before the first. */
  Optional<ReducedCycle> provisional() {
    return mean == null ? Optional.empty() : Optional.of(corrected(null, part));
  }

  private ReducedCycle corrected(float[] meanAfter, DriftPart partAfter) {
    float[] i = inPhase.clone();
    float[] c = quadrature.clone();
    if (meanBefore != null && meanAfter != null) {
      float share = beforeIsFirst ? 0.125f : 0.0625f;
      for (int p = 0; p < i.length; p++) {
        i[p] += (meanAfter[p] - 2 * mean[p] + meanBefore[p]) * share;
      }
    }
    if (meanBefore != null && meanAfter != null && !beforeIsFirst) {
      takeOut(meanAfter, meanBefore, 2 + partAfter.late() - partBefore.late(), i, c);
    } else if (meanBefore != null) {
      takeOut(mean, meanBefore, 1 + part.late() - partBefore.late(), i, c);
    } else if (meanAfter != null) {
      takeOut(meanAfter, mean, 1 + partAfter.late() - part.late(), i, c);
    }
    return new ReducedCycle(i, c);
  }

  /** Takes out what a slope adds that makes two means differ so many periods apart. */
  private void takeOut(float[] later, float[] earlier, double periods, float[] i, float[] c) {
    float ofC = (float) (part.quadrature() / periods);
    for (int p = 0; p < c.length; p++) {
      c[p] -= (later[p] - earlier[p]) * ofC;
    }
    float ofI = (float) (part.inPhase() / periods);
    if (ofI != 0) {
      for (int p = 0; p < i.length; p++) {
        i[p] -= (later[p] - earlier[p]) * ofI;
      }
    }
  }

  private static void reduce(QuarterMeans q, float[] inPhase, float[] quadrature, float[] mean) {
    float[] q1 = q.q1().values();
    float[] q2 = q.q2().values();
    float[] q3 = q.q3().values();
    float[] q4 = q.q4().values();
    for (int p = 0; p < inPhase.length; p++) {
      inPhase[p] = (q2[p] + q3[p] - q1[p] - q4[p]) * 0.5f;
      quadrature[p] = (q3[p] + q4[p] - q1[p] - q2[p]) * 0.5f;
      mean[p] = (q1[p] + q2[p] + q3[p] + q4[p]) * 0.25f;
    }
  }

  /** 1 where both channels are numbers, 0 elsewhere; null when all are. NaN is replaced by 0. */
  static float[] maskInvalid(ReducedCycle cycle) {
    float[] mask = null;
    for (int p = 0; p < cycle.inPhase().length; p++) {
      if (!(Math.abs(cycle.inPhase()[p]) < Float.MAX_VALUE)
          || !(Math.abs(cycle.quadrature()[p]) < Float.MAX_VALUE)) {
        if (mask == null) {
          mask = new float[cycle.inPhase().length];
          Arrays.fill(mask, 1);
        }
        mask[p] = 0;
        cycle.inPhase()[p] = 0;
        cycle.quadrature()[p] = 0;
      }
    }
    return mask;
  }
}

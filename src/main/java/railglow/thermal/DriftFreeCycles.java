package railglow.thermal;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Reduces quarter means to channels and takes the drift out of them to second order.
 *
 * <p>With time in periods, a slope s adds s/2 to the quadrature and nothing in phase; a curvature q
 * t^2 adds -q/8 in phase and nothing to the quadrature. Both come from the cycle means of the
 * neighbours, which a periodic signal leaves unchanged. A cycle is therefore final only when the
 * next one is there; until then it has a provisional form with a one-sided slope. Where the times
 * of the frames are known, so is how far they are from the middles of the quarters, which the
 * slope's part goes by ({@link DriftPart}). A gap in the cycle numbers (a rejected cycle, perhaps a
 * shutter event with a new pattern) is never bridged: a cycle with a gap on both sides keeps all of
 * its drift, whose s/2 in the quadrature is in what is stated only as scatter between cycles.
 *
 * <p>For white noise of variance v per channel and cycle the slope costs v/32 and the curvature
 * 0.006 v within a cycle, and nearly nothing in the mean, where the corrections telescope. Not
 * thread-safe.
 */
final class DriftFreeCycles {
  /** Pixels at a time: what the loops share stays in the cache. */
  private static final int TILE = 1024;

  /** Part of a second difference of means that a curvature takes away in phase. */
  private static final float CURVATURE_IN_PHASE = 0.0625f;

  private int lastCycle = Integer.MIN_VALUE;
  private float[] inPhase;
  private float[] quadrature;
  private float[] mean;
  private float[] meanBefore;
  private int taken;
  private ReducedCycle startBend;
  private DriftPart part = DriftPart.OF_WHOLE_QUARTERS;
  private DriftPart partBefore = part;
  private boolean[] alive;

  /** The first so many are the pixels that never changed so far. */
  private int[] unchanged;

  private int unchangedPixels;

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
            : Optional.of(
                corrected(
                    new ReducedCycle(inPhase, quadrature), adjacent ? newMean : null, newPart));
    if (adjacent && meanBefore != null && taken == 2) {
      startBend = startBend(newMean);
    }
    taken++;
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
      unchanged = IntStream.range(0, alive.length).toArray();
      unchangedPixels = alive.length;
    }
    int left = 0;
    for (int k = 0; k < unchangedPixels; k++) {
      int p = unchanged[k];
      alive[p] = Math.abs(newInPhase[p]) + Math.abs(newQuadrature[p]) > 0;
      if (!alive[p]) {
        unchanged[left++] = p;
      }
    }
    unchangedPixels = left;
  }

  /** Which pixels changed at least once within a cycle; the array itself, null without cycles. */
  boolean[] alive() {
    return alive;
  }

  /** The last cycle with what is known so far; empty before the first. */
  Optional<ReducedCycle> provisional() {
    return mean == null
        ? Optional.empty()
        : Optional.of(corrected(new ReducedCycle(inPhase.clone(), quadrature.clone()), null, part));
  }

  /**
   * What the first cycle's mean took out of the second one too much, when a board began to warm in
   * it: to be added to the sum of all cycles but the first, without common parts taken out. The
   * second one's slope then goes by its own mean and the third's. Empty before the third cycle, and
   * where a gap came before it.
   */
  Optional<ReducedCycle> startBend() {
    return Optional.ofNullable(startBend);
  }

  private ReducedCycle startBend(float[] third) {
    float[] i = new float[third.length];
    float[] c = new float[third.length];
    bend(i, third, mean, meanBefore, -CURVATURE_IN_PHASE);
    // what a slope one-sided to the third takes out, less what one across takes out
    bend(c, third, mean, meanBefore, -0.25f);
    return new ReducedCycle(i, c);
  }

  /** Takes drift out of the last cycle's channels, in place. */
  private ReducedCycle corrected(ReducedCycle cycle, float[] meanAfter, DriftPart partAfter) {
    float[] i = cycle.inPhase();
    float[] c = cycle.quadrature();
    if (meanBefore != null && meanAfter != null) {
      bend(i, meanAfter, mean, meanBefore, CURVATURE_IN_PHASE);
      takeOut(meanAfter, meanBefore, 2 + partAfter.late() - partBefore.late(), i, c);
    } else if (meanAfter != null) {
      takeOut(meanAfter, mean, 1 + partAfter.late() - part.late(), i, c);
    } else if (meanBefore != null) {
      takeOut(mean, meanBefore, 1 + part.late() - partBefore.late(), i, c);
    }
    return cycle;
  }

  /** Takes out what a slope adds that makes two means differ so many periods apart. */
  private void takeOut(float[] later, float[] earlier, double periods, float[] i, float[] c) {
    subtract(c, later, earlier, (float) (part.quadrature() / periods));
    float ofI = (float) (part.inPhase() / periods);
    if (ofI != 0) {
      subtract(i, later, earlier, ofI);
    }
  }

  private static void bend(float[] i, float[] after, float[] mean, float[] before, float share) {
    for (int p = 0; p < i.length; p++) {
      i[p] += (after[p] - 2 * mean[p] + before[p]) * share;
    }
  }

  private static void subtract(float[] from, float[] later, float[] earlier, float share) {
    for (int p = 0; p < from.length; p++) {
      from[p] -= (later[p] - earlier[p]) * share;
    }
  }

  private static void reduce(QuarterMeans q, float[] inPhase, float[] quadrature, float[] mean) {
    float[] q1 = q.q1().values();
    float[] q2 = q.q2().values();
    float[] q3 = q.q3().values();
    float[] q4 = q.q4().values();
    for (int from = 0; from < mean.length; from += TILE) {
      int to = Math.min(mean.length, from + TILE);
      halfDifference(inPhase, q2, q3, q1, q4, from, to);
      halfDifference(quadrature, q3, q4, q1, q2, from, to);
      mean(mean, q1, q2, q3, q4, from, to);
    }
  }

  private static void halfDifference(
      float[] result, float[] a, float[] b, float[] c, float[] d, int from, int to) {
    for (int p = from; p < to; p++) {
      result[p] = (a[p] + b[p] - c[p] - d[p]) * 0.5f;
    }
  }

  private static void mean(
      float[] result, float[] a, float[] b, float[] c, float[] d, int from, int to) {
    for (int p = from; p < to; p++) {
      result[p] = (a[p] + b[p] + c[p] + d[p]) * 0.25f;
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

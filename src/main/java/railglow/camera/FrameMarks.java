package railglow.camera;

import java.util.Arrays;
import railglow.observed.Frame;
import railglow.observed.FrameMark;
import railglow.thermal.CountSamples;
import railglow.thermal.FloatSamples;
import railglow.thermal.Samples;
import railglow.thermal.Selection;

/**
 * Marks frames that are frozen, damaged, taken in a shutter event, or changed as a whole, by their
 * content alone. A pure function of the frames in order; allocates nothing per frame. Not
 * thread-safe.
 *
 * <p>Frames with equal {@link #segment} may be compared; between segments every pixel's offset may
 * have changed, so a cycle that holds frames of two segments must not be used.
 */
public final class FrameMarks {
  /**
   * Steps of the whole image beyond this many times the usual one are events. Real cameras step by
   * ten times their usual step now and then, without a shutter.
   */
  private static final double COMMON_FACTOR = 16;

  /** But never below this part of the usual change of one pixel. */
  private static final double COMMON_FLOOR = 1;

  /** After a freeze or a pause half as much is enough, since a shutter is likely. */
  private static final double AFTER_PAUSE = 0.5;

  private static final double SPREAD_FACTOR = 6;
  private static final double SPREAD_FACTOR_AFTER_PAUSE = 1.5;
  private static final double CLIP = 6;
  private static final double SUDDEN_SHARE = 0.03;
  private static final double ZERO_SHARE = 0.2;
  private static final double PAUSE_SECONDS = 0.25;
  private static final int PAUSE_FRAMES = 3;

  /** Mean changes of the whole image below this are rounding, in counts. */
  private static final double SMALLEST_COUNTS = 0.05;

  private static final FrameMark[] ALL = FrameMark.values();
  private static final double NANOS = 1e9;
  private final double periodSeconds;
  private final double settlingSeconds;
  private final double smallestChange;
  private final PixelGrid grid;
  private final Samples previous;
  private final float[] reference;
  private final float[] current;
  private final float[] sorted;
  private final TypicalLevel usualCommon = new TypicalLevel();
  private final TypicalLevel usualSpread = new TypicalLevel();
  private final long[] counts = new long[ALL.length];
  private boolean hasPrevious;
  private boolean hasReference;
  private long referenceNanos;
  private int frozenInSuccession;
  private int fewestNotFinite = Integer.MAX_VALUE;
  private int fewestZeros;
  private long settledNanos = Long.MIN_VALUE;
  private int segment;
  private boolean inChange;
  private double common;
  private double spread;

  /**
   * @param like one image of the camera's kind and size
   */
  public FrameMarks(CameraDescriptor camera, Samples like) {
    this(like, camera.framesPerSecond(), camera.shutterSettlingSeconds());
  }

  /**
   * @param like one image of the camera's kind and size
   */
  public FrameMarks(Samples like, double framesPerSecond, double shutterSettlingSeconds) {
    this.periodSeconds = 1 / framesPerSecond;
    this.settlingSeconds = shutterSettlingSeconds;
    this.smallestChange = like instanceof CountSamples ? SMALLEST_COUNTS : 0;
    this.grid = new PixelGrid(like.width(), like.height());
    this.previous = like.newLike();
    this.reference = new float[grid.size()];
    this.current = new float[grid.size()];
    this.sorted = new float[grid.size()];
  }

  /**
   * Looks at the next frame and adds its marks.
   *
   * @param midExposureNanos of the frame, ascending
   */
  public void mark(Frame frame, long midExposureNanos) {
    boolean frozen = hasPrevious && sameAsPrevious(frame.samples());
    if (frozen) {
      frame.marks().add(FrameMark.FROZEN);
      frozenInSuccession++;
    } else {
      previous.copyFrom(frame.samples());
      hasPrevious = true;
      grid.read(frame.samples(), current);
      if (isDamaged()) {
        frame.marks().add(FrameMark.DAMAGED);
      } else {
        compare(frame, midExposureNanos);
        System.arraycopy(current, 0, reference, 0, current.length);
        hasReference = true;
        referenceNanos = midExposureNanos;
        frozenInSuccession = 0;
      }
    }
    if (midExposureNanos < settledNanos) {
      frame.marks().add(FrameMark.SHUTTER);
    }
    for (FrameMark mark : ALL) {
      if (frame.marks().contains(mark)) {
        counts[mark.ordinal()]++;
      }
    }
  }

  /** From 0; rises with every event after which pixels can't be compared with earlier ones. */
  public int segment() {
    return segment;
  }

  /** How many frames bore a mark when they left here. */
  public long count(FrameMark mark) {
    return counts[mark.ordinal()];
  }

  private void compare(Frame frame, long nanos) {
    if (!hasReference) {
      return;
    }
    measure();
    double seconds = (nanos - referenceNanos) / NANOS;
    boolean paused =
        frozenInSuccession >= 2
            || seconds > Math.max(PAUSE_SECONDS, (PAUSE_FRAMES + 0.5) * periodSeconds);
    double usual = usualSpread.median();
    double least = Math.max(COMMON_FACTOR * usualCommon.median(), COMMON_FLOOR * usual);
    boolean stepped = Math.abs(common) > (paused ? AFTER_PAUSE : 1) * least + smallestChange;
    double factor = paused ? SPREAD_FACTOR_AFTER_PAUSE : SPREAD_FACTOR;
    boolean changed = spread > factor * usual + smallestChange;
    if (stepped || (paused && changed)) {
      if (nanos >= settledNanos) {
        segment++;
      }
      settledNanos = nanos + Math.round(settlingSeconds * NANOS) + 1;
    } else if (changed) {
      frame.marks().add(FrameMark.MOVED);
      segment += inChange ? 0 : 1;
    }
    inChange = changed;
    if (!stepped && !changed && !paused) {
      usualCommon.add(Math.abs(common));
      usualSpread.add(spread);
    }
  }

  /** The common part of the change since the reference, and the mean size of the rest. */
  private void measure() {
    int used = 0;
    for (int i = 0; i < current.length; i++) {
      float change = current[i] - reference[i];
      if (change == change) {
        sorted[used++] = change;
      }
    }
    spread = 0;
    if (used == 0) {
      common = 0;
      return;
    }
    double median = Selection.median(sorted, used);
    double usual = usualSpread.median();
    double clip = usual > 0 ? CLIP * usual : Double.POSITIVE_INFINITY;
    double sum = 0;
    int near = 0;
    for (int i = 0; i < used; i++) {
      if (Math.abs(sorted[i] - median) <= clip) {
        sum += sorted[i];
        near++;
      }
    }
    common = sum / near;
    for (int i = 0; i < used; i++) {
      spread += Math.min(4 * clip, Math.abs(sorted[i] - common)) / used;
    }
  }

  private boolean isDamaged() {
    int zeros = 0;
    int notFinite = 0;
    for (float value : current) {
      if (value == 0) {
        zeros++;
      } else if (!Float.isFinite(value)) {
        notFinite++;
      }
    }
    int sudden = (int) Math.ceil(SUDDEN_SHARE * current.length);
    boolean first = fewestNotFinite == Integer.MAX_VALUE;
    boolean damaged =
        notFinite > (first ? current.length / 2 : fewestNotFinite + sudden)
            || zeros > fewestZeros + ZERO_SHARE * current.length;
    fewestNotFinite = Math.min(fewestNotFinite, notFinite);
    fewestZeros = first ? zeros : Math.min(fewestZeros, zeros);
    return damaged;
  }

  private boolean sameAsPrevious(Samples samples) {
    if (samples instanceof CountSamples counted) {
      return Arrays.equals(counted.counts(), ((CountSamples) previous).counts());
    }
    return Arrays.equals(((FloatSamples) samples).values(), ((FloatSamples) previous).values());
  }
}

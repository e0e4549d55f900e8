package railglow.camera.motion;

import java.util.Optional;
import railglow.observed.Frame;
import railglow.observed.FrameMark;
import railglow.thermal.Samples;

/**
 * Follows the scene's place, frame by frame: still scenes stay untouched to the bit, small shifts
 * can be undone, a nudge is marked and opens a new segment, a lost place is told. A pure function
 * of the frames in order; allocates nothing per frame. Not thread-safe.
 *
 * <p>Frames that are frozen, damaged or in a shutter event take no part.
 */
public final class MotionWatch {
  private static final double NANOS = 1e9;
  private static final double LEARNING_SECONDS = 1;
  private static final double TRIAL_SECONDS = 6;
  private static final double LIKE_LEARNED = 2.5;
  private static final int LEARNING_FRAMES = 8;

  /** Pixels, as all lengths here, of a picture of {@link #USUAL_PIXELS} or fewer. */
  private static final double TELLING_PIXELS = 0.05;

  private static final double USUAL_PIXELS = 50_000;
  private static final double SMALLEST_PIXELS = 0.1;
  private static final double SIGNIFICANT = 4;
  private static final double NEWEST_WEIGHT = 0.2;
  private static final double NUDGE_PIXELS = 0.25;
  private static final double NUDGE_SIGMAS = 6;
  private static final double AGREEING_PIXELS = 0.1;
  private static final int CONFIRMING_FRAMES = 3;
  private static final double UNLIKE = 1.5;
  private static final int FRAMES_BETWEEN_SEARCHES = 5;
  private static final double RECOGNISED = 0.5;
  private static final double LOST_SECONDS = 2;
  private final ImageReduction reduction;
  private final ShiftEstimator estimator;
  private final FrameShift frameShift;
  private final StructureWatch structure = new StructureWatch();
  private final CoarsePlace coarse;
  private final NearbyShift nearby;
  private final float[] image;
  private final double[] sum;
  private final double reachPixels;
  private final double scale;
  private MotionState state = MotionState.LEARNING;
  private int learned;
  private long firstNanos;
  private double noiseScale;
  private double learnedScale;
  private double smoothX;
  private double smoothY;
  private double newX;
  private double newY;
  private int agreeing;
  private int sinceFar;
  private long lastInPlaceNanos;
  private boolean elsewhere;
  private boolean correcting;
  private int segment;

  /**
   * @param like one image of the camera's kind and size
   */
  public MotionWatch(Samples like) {
    reduction = new ImageReduction(like.width(), like.height());
    boolean large = Math.min(reduction.width(), reduction.height()) >= 16;
    estimator = large ? new ShiftEstimator(reduction.width(), reduction.height()) : null;
    coarse = new CoarsePlace(reduction.width(), reduction.height());
    nearby = new NearbyShift(like.width(), like.height(), reduction);
    frameShift = new FrameShift(like);
    image = new float[reduction.width() * reduction.height()];
    sum = new double[image.length];
    double cameraPixels = (double) like.width() * like.height();
    scale = Math.sqrt(Math.max(1, cameraPixels / USUAL_PIXELS)) / reduction.factor();
    reachPixels = large ? estimator.reachPixels() * reduction.factor() : 0;
    if (!large) {
      state = MotionState.CANT_TELL;
    }
  }

  /**
   * Looks at the next frame and may mark it {@link FrameMark#MOVED}. Its pixels are not touched:
   * see {@link #correctionX} and {@link #corrected}.
   *
   * @param midExposureNanos of the frame, ascending
   */
  public MotionState look(Frame frame, long midExposureNanos) {
    if (state == MotionState.CANT_TELL || state == MotionState.LOST || isUnusable(frame)) {
      return state;
    }
    if (nearby.isNear(frame.samples()) && !structure.isGone(nearby.missing())) {
      settle(nearby.shiftX(), nearby.shiftY(), midExposureNanos);
      return state;
    }
    nearby.end();
    reduction.read(frame.samples(), image);
    if (state == MotionState.LEARNING) {
      learn(midExposureNanos);
      return state;
    }
    boolean found = find();
    boolean onTrial = (midExposureNanos - firstNanos) / NANOS < TRIAL_SECONDS;
    if (onTrial && doubtTexture()) {
      state = MotionState.CANT_TELL;
      return state;
    }
    follow(found, midExposureNanos);
    if (state == MotionState.STILL && !onTrial) {
      nearby.begin(frame.samples(), estimator);
    }
    if (state == MotionState.MOVED || state == MotionState.LOST) {
      frame.marks().add(FrameMark.MOVED);
    }
    return state;
  }

  public MotionState state() {
    return state;
  }

  /** What the frame just looked at must be moved back by, camera pixels; 0 when it is in place. */
  public double correctionX() {
    return state == MotionState.CORRECTED ? shiftX() : 0;
  }

  /** As {@link #correctionX}, downwards. */
  public double correctionY() {
    return state == MotionState.CORRECTED ? shiftY() : 0;
  }

  /**
   * An image with a shift of the scene undone.
   *
   * @return the very same image when there is nothing to undo; else one that is overwritten by the
   *     next call
   */
  public Samples corrected(Samples image, double dx, double dy) {
    return dx == 0 && dy == 0 ? image : frameShift.movedBack(image, dx, dy);
  }

  /** How far the scene stands right of its first place, smoothed, camera pixels. */
  public double shiftX() {
    return smoothX * reduction.factor();
  }

  /** How far the scene stands below its first place, smoothed, camera pixels. */
  public double shiftY() {
    return smoothY * reduction.factor();
  }

  /** The standard error of one frame's shift, camera pixels; infinite where it can't be told. */
  public double sigmaPixels() {
    return estimator == null || state == MotionState.LEARNING
        ? Double.POSITIVE_INFINITY
        : estimator.sigmaPixels() * reduction.factor();
  }

  /** Why a shift of this scene can't be seen, as a sentence; empty while it can. */
  public Optional<String> blindness() {
    if (state != MotionState.CANT_TELL) {
      return Optional.empty();
    }
    return Optional.of(
        estimator == null
            ? BlindnessText.TOO_SMALL
            : BlindnessText.tooPlain(sigmaPixels(), TELLING_PIXELS * scale * reduction.factor()));
  }

  /** The largest shift that can be followed, camera pixels. */
  public double reachPixels() {
    return reachPixels;
  }

  /** From 0; rises with every nudge, after which offsets of pixels have changed. */
  public int segment() {
    return segment;
  }

  private static boolean isUnusable(Frame frame) {
    return frame.marks().contains(FrameMark.FROZEN)
        || frame.marks().contains(FrameMark.DAMAGED)
        || frame.marks().contains(FrameMark.SHUTTER);
  }

  private void learn(long nanos) {
    if (learned == 0) {
      firstNanos = nanos;
    }
    for (int i = 0; i < image.length; i++) {
      sum[i] += image[i];
    }
    learned++;
    if (learned < LEARNING_FRAMES || (nanos - firstNanos) / NANOS < LEARNING_SECONDS) {
      return;
    }
    float[] mean = new float[image.length];
    for (int i = 0; i < image.length; i++) {
      mean[i] = (float) (sum[i] / learned);
    }
    estimator.setReference(mean);
    coarse.setReference(mean);
    nearby.setReference(estimator);
    estimator.estimate(image, 0, 0);
    noiseScale = estimator.residual();
    learnedScale = noiseScale;
    lastInPlaceNanos = nanos;
    double sigma = estimator.sigmaPixels();
    state = sigma < TELLING_PIXELS * scale ? MotionState.STILL : MotionState.CANT_TELL;
  }

  /**
   * Whether the texture is too weak after all: where noise hangs together over a second, the first
   * frames agree better with their own mean than later ones do.
   */
  private boolean doubtTexture() {
    double residual = estimator.residual();
    noiseScale = Math.max(noiseScale, Math.min(residual, LIKE_LEARNED * learnedScale));
    return estimator.sigmaPixels() * noiseScale / residual > TELLING_PIXELS * scale;
  }

  /** Whether the scene was recognised anywhere within reach. */
  private boolean find() {
    elsewhere = coarse.isElsewhere(image, smoothX, smoothY);
    if (elsewhere && agreeing == 0) {
      // a fixed pattern would hold the estimate where it was
      newX = coarse.shiftX();
      newY = coarse.shiftY();
    }
    boolean begunElsewhere = elsewhere || agreeing > 0;
    boolean found =
        estimator.estimate(image, begunElsewhere ? newX : smoothX, begunElsewhere ? newY : smoothY);
    // In a wrong place is left what is as strong as the structure; heat that spreads leaves less.
    double likeLimit = Math.max(UNLIKE * noiseScale, RECOGNISED * estimator.texture());
    boolean unlike = !found || estimator.residual() > likeLimit;
    // The search from afar is dear: in a scene that goes on moving it is made now and then only.
    if (unlike
        && agreeing == 0
        && (state != MotionState.MOVED || sinceFar >= FRAMES_BETWEEN_SEARCHES)) {
      sinceFar = 0;
      double nearX = estimator.shiftX();
      double nearY = estimator.shiftY();
      double nearResidual = estimator.residual();
      boolean foundFar = estimator.estimateFromAfar(image);
      if (!foundFar || (found && estimator.residual() >= nearResidual)) {
        found = found && estimator.estimate(image, nearX, nearY);
      } else {
        found = true;
      }
    }
    sinceFar++;
    double limit = Math.max(2 * UNLIKE * noiseScale, RECOGNISED * estimator.texture());
    return found && estimator.residual() <= limit;
  }

  private void follow(boolean found, long nanos) {
    double x = estimator.shiftX();
    double y = estimator.shiftY();
    double sigma = estimator.sigmaPixels();
    double away = Math.max(Math.abs(x - smoothX), Math.abs(y - smoothY));
    boolean near = found && away < Math.max(NUDGE_PIXELS * scale, NUDGE_SIGMAS * sigma);
    boolean known = found && !(near && (elsewhere || structure.isGone(estimator.missing())));
    if (near && known) {
      agreeing = 0;
      settle(x, y, nanos);
      return;
    }
    state = MotionState.MOVED;
    if (known
        && agreeing > 0
        && Math.hypot(x - newX, y - newY) < AGREEING_PIXELS * scale + 4 * sigma) {
      agreeing++;
    } else {
      agreeing = known ? 1 : 0;
    }
    newX = x;
    newY = y;
    if (agreeing >= CONFIRMING_FRAMES) {
      agreeing = 0;
      segment++;
      structure.begin();
      coarse.begin();
      smoothX = x;
      smoothY = y;
      // The camera's fixed pattern no longer lies on the reference's: more is left from now on.
      noiseScale = Math.max(noiseScale, estimator.residual());
      inPlace(nanos);
      state = MotionState.MOVED;
    } else if ((nanos - lastInPlaceNanos) / NANOS > LOST_SECONDS) {
      state = MotionState.LOST;
    }
  }

  private void settle(double x, double y, long nanos) {
    smoothX += NEWEST_WEIGHT * (x - smoothX);
    smoothY += NEWEST_WEIGHT * (y - smoothY);
    inPlace(nanos);
  }

  private void inPlace(long nanos) {
    lastInPlaceNanos = nanos;
    // Not divided by what smoothing gains: real cameras' noise hangs together from frame to frame.
    double shift = Math.max(Math.abs(smoothX), Math.abs(smoothY)) * reduction.factor();
    double least = Math.max(SMALLEST_PIXELS, SIGNIFICANT * sigmaPixels());
    correcting = shift > (correcting ? least / 2 : least);
    state = correcting ? MotionState.CORRECTED : MotionState.STILL;
  }
}

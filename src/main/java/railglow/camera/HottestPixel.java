package railglow.camera;

import railglow.observed.Frame;
import railglow.thermal.CountSamples;
import railglow.thermal.CountSums;
import railglow.thermal.ImageSums;
import railglow.thermal.Samples;

/**
 * The hottest place in each frame, for limits: its temperature, and its rise above the pixel's own
 * mean in the lead-in. A pixel counts when a neighbour shares in its heat, as optics make every
 * real source do; one that is hot all alone is taken for a bad pixel until it has been the hottest
 * three frames running. Allocates nothing per frame once it has looked. Not thread-safe.
 *
 * <p>Counts are screened: stretches of the picture in which no pixel can be hotter than what was
 * found before are left out, to the same result (decision 0085).
 */
public final class HottestPixel {
  private static final double SHARED_PART = 0.2;
  private static final double SLIGHT_KELVIN = 1;
  private static final int BELIEVED_AFTER = 3;
  private final CameraProfile camera;
  private final ImageSums leadIn;
  private final double[] leadInMean;
  private PixelScreen screen;
  private int framesInMean;
  private double celsius = Double.NaN;
  private double riseKelvin = Double.NaN;
  private int hottestIndex;
  private int loneIndex = -1;
  private int loneInSuccession;

  public HottestPixel(CameraProfile camera) {
    this.camera = camera;
    int pixels = camera.width() * camera.height();
    this.leadIn = new ImageSums(pixels);
    this.leadInMean = new double[pixels];
  }

  /** Adds a frame to the lead-in: before any power. Beyond 32767 the mean stays as it is. */
  public void learn(Frame frame) {
    if (leadIn.images() < CountSums.MOST_IMAGES) {
      leadIn.add(frame.samples());
    }
  }

  /** Looks at a frame; the results stay until the next look. */
  public void look(Frame frame) {
    Samples samples = frame.samples();
    if (samples instanceof CountSamples && screen == null) {
      screen = new PixelScreen(camera.kelvinPerCount() < 0);
    }
    if (framesInMean < leadIn.images()) {
      takeMean();
    }
    if (camera.hasKelvin() && framesInMean > 0) {
      lookForRise(samples);
    }
    if (camera.hasCelsius()) {
      lookForTemperature(samples);
    }
  }

  private void takeMean() {
    framesInMean = leadIn.images();
    for (int i = 0; i < leadInMean.length; i++) {
      leadInMean[i] = leadIn.sumAt(i) / framesInMean;
    }
    if (screen != null) {
      screen.riseFrom(leadInMean);
    }
  }

  /** NaN when the camera has no absolute scale, or before the first look. */
  public double celsius() {
    return celsius;
  }

  /** Above the lead-in mean of the same pixel; NaN without scale, lead-in or look. */
  public double riseKelvin() {
    return riseKelvin;
  }

  /** Of the greatest rise where it is known, else of the highest temperature. */
  public int column() {
    return hottestIndex % camera.width();
  }

  /** As {@link #column}. */
  public int row() {
    return hottestIndex / camera.width();
  }

  private void lookForRise(Samples samples) {
    double best = Double.NEGATIVE_INFINITY;
    double bestLone = Double.NEGATIVE_INFINITY;
    int lone = -1;
    int at = 0;
    for (int i = nextRise(samples, 0, best);
        i < leadInMean.length;
        i = nextRise(samples, i + 1, best)) {
      double rise = riseAt(samples, i);
      if (rise > bestLone) {
        if (rise < SLIGHT_KELVIN || neighbourRise(samples, i) >= SHARED_PART * rise) {
          best = rise;
          at = i;
        } else {
          bestLone = rise;
          lone = i;
        }
      } else if (neighbourRise(samples, i) >= SHARED_PART * rise) {
        best = rise;
        at = i;
      }
    }
    loneInSuccession = lone >= 0 && lone == loneIndex ? loneInSuccession + 1 : 1;
    loneIndex = lone;
    if (lone >= 0 && loneInSuccession >= BELIEVED_AFTER) {
      best = bestLone;
      at = lone;
    }
    riseKelvin = best;
    hottestIndex = at;
  }

  private void lookForTemperature(Samples samples) {
    double best = Double.NEGATIVE_INFINITY;
    int at = 0;
    for (int i = nextWarmer(samples, 0, best);
        i < leadInMean.length;
        i = nextWarmer(samples, i + 1, best)) {
      double here = camera.celsius(samples.valueAt(i));
      if (isShared(samples, i, here)) {
        best = here;
        at = i;
      }
    }
    if (framesInMean == 0) {
      hottestIndex = at;
    } else if (loneInSuccession >= BELIEVED_AFTER && loneIndex >= 0) {
      best = Math.max(best, camera.celsius(samples.valueAt(loneIndex)));
    }
    celsius = best;
  }

  /** The first pixel from a place on that has risen further. */
  private int nextRise(Samples samples, int from, double best) {
    int i = from;
    if (samples instanceof CountSamples counted) {
      short[] counts = counted.counts();
      while (i < counts.length) {
        int end = endOfStretch(i);
        if (i % PixelScreen.STRETCH == 0 && !screen.mayRiseBeyond(counts, i, mostCounts(best))) {
          i = end;
        } else {
          i = nextRise(counts, i, end, best);
          if (i < end) {
            return i;
          }
        }
      }
      return i;
    }
    while (i < leadInMean.length && !(riseAt(samples, i) > best)) {
      i++;
    }
    return i;
  }

  /** The same within a stretch, whose end stands for none. */
  private int nextRise(short[] counts, int from, int end, double best) {
    double scale = camera.kelvinPerCount();
    int i = from;
    while (i < end && !(((counts[i] & 0xFFFF) - leadInMean[i]) * scale > best)) {
      i++;
    }
    return i;
  }

  /**
   * The greatest whole rise in counts that is not beyond one in kelvin. A pixel's rise in counts is
   * at most the whole one above the floor of its mean, and rounding keeps the order: so none is
   * missed, whatever the last digits.
   */
  private int mostCounts(double kelvin) {
    double scale = Math.abs(camera.kelvinPerCount());
    int most = (int) Math.max(-0x10001, Math.min(0x10000, kelvin / scale));
    while (most > -0x10001 && most * scale > kelvin) {
      most--;
    }
    while (most < 0x10000 && !((most + 1) * scale > kelvin)) {
      most++;
    }
    return most;
  }

  /** The first pixel from a place on that is warmer. */
  private int nextWarmer(Samples samples, int from, double best) {
    int i = from;
    if (samples instanceof CountSamples counted) {
      short[] counts = counted.counts();
      // Where hot is dark counts are turned round, so that more is always warmer.
      int turn = camera.kelvinPerCount() > 0 ? 0 : 0xFFFF;
      int least = leastWarmer(best, turn);
      while (i < counts.length) {
        int end = endOfStretch(i);
        if (i % PixelScreen.STRETCH == 0 && !screen.mayBeAbove(counts, i, least - 1)) {
          i = end;
        }
        while (i < end && ((counts[i] & 0xFFFF) ^ turn) < least) {
          i++;
        }
        if (i < end) {
          return i;
        }
      }
      return i;
    }
    while (i < leadInMean.length && !(camera.celsius(samples.valueAt(i)) > best)) {
      i++;
    }
    return i;
  }

  private int endOfStretch(int pixel) {
    int start = pixel - pixel % PixelScreen.STRETCH;
    return Math.min(start + PixelScreen.STRETCH, leadInMean.length);
  }

  /** The least turned count that is warmer than a temperature, by halving; 65536 if none is. */
  private int leastWarmer(double celsius, int turn) {
    int low = 0;
    int high = 1 << 16;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (camera.celsius(middle ^ turn) > celsius) {
        high = middle;
      } else {
        low = middle + 1;
      }
    }
    return low;
  }

  private double riseAt(Samples samples, int index) {
    return (samples.valueAt(index) - leadInMean[index]) * camera.kelvinPerCount();
  }

  private double neighbourRise(Samples samples, int index) {
    double best = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < 8; k++) {
      int neighbour = neighbour(index, k);
      if (neighbour >= 0) {
        best = Math.max(best, finite(riseAt(samples, neighbour)));
      }
    }
    return best;
  }

  /** Whether a neighbour stands out of the surroundings together with this pixel. */
  private boolean isShared(Samples samples, int index, double here) {
    double warmest = Double.NEGATIVE_INFINITY;
    double coolest = Double.POSITIVE_INFINITY;
    for (int k = 0; k < 8; k++) {
      int neighbour = neighbour(index, k);
      double there = neighbour < 0 ? Double.NaN : camera.celsius(samples.valueAt(neighbour));
      if (there == there) {
        warmest = Math.max(warmest, there);
        coolest = Math.min(coolest, there);
      }
    }
    return here - coolest < SLIGHT_KELVIN || warmest - coolest >= SHARED_PART * (here - coolest);
  }

  private int neighbour(int index, int k) {
    int place = k < 4 ? k : k + 1;
    int column = index % camera.width() + place % 3 - 1;
    int row = index / camera.width() + place / 3 - 1;
    boolean inside = column >= 0 && column < camera.width() && row >= 0 && row < camera.height();
    return inside ? row * camera.width() + column : -1;
  }

  private static double finite(double value) {
    return value == value ? value : Double.NEGATIVE_INFINITY;
  }
}

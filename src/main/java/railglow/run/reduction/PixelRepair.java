package railglow.run.reduction;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import java.util.StringJoiner;
import railglow.camera.noise.PixelCensus;
import railglow.camera.noise.PixelFault;
import railglow.camera.noise.PixelFaults;
import railglow.observed.Frame;
import railglow.thermal.FloatSamples;
import railglow.thermal.Plane;
import railglow.thermal.QuarterMeans;
import railglow.thermal.Samples;

/**
 * Finds dead and flickering pixels in the lead-in, when there is no power, and puts the mean of
 * their sound neighbours in their place, in a copy. A row or column that stands out by a standing
 * offset is left as it is: a difference does not see it. Saturated pixels are taken out of the
 * cycles' means. Not thread-safe.
 */
final class PixelRepair {
  private static final Set<PixelFault> REPAIRED =
      EnumSet.of(PixelFault.DEAD, PixelFault.FLICKERING);

  /** More than this share of the picture is no fault of pixels: something moved in the scene. */
  private static final double MOST = 0.005;

  private final PixelCensus census;
  private final Samples copy;
  private final SaturatedPixels saturated;
  private PixelFaults faults;

  /**
   * @param like one image of the camera's kind and size
   * @param saturationValue samples at or above it are at the end of the camera's scale
   */
  PixelRepair(Samples like, double saturationValue) {
    this.census = new PixelCensus(like, saturationValue);
    this.copy = like.newLike();
    this.saturated = new SaturatedPixels(like.width(), like.height(), saturationValue);
  }

  /** Takes a frame of the lead-in. */
  void learn(Frame frame) {
    if (faults == null) {
      census.add(frame);
    }
  }

  /**
   * Ends the learning and tells what was found, if anything; later calls do nothing.
   *
   * @param nowNanos of the first frame that is used
   */
  void settle(ReductionListener listener, long nowNanos) {
    if (faults != null) {
      return;
    }
    String found = judge();
    if (!found.isEmpty()) {
      listener.onNote(found, nowNanos);
    }
  }

  private String judge() {
    PixelFaults found = census.faults().only(REPAIRED);
    int pixels = copy.width() * copy.height();
    boolean plausible = found.count() <= Math.max(4, MOST * pixels);
    faults = plausible ? found : PixelFaults.none(copy.width(), copy.height());
    if (!plausible) {
      return found.count()
          + " pixels seem bad, too many to be the camera's own: none was repaired; did something"
          + " move in view during the lead-in?";
    }
    StringJoiner words = new StringJoiner(", ");
    for (PixelFault fault : REPAIRED) {
      if (faults.count(fault) > 0) {
        words.add(faults.count(fault) + " " + fault.name().toLowerCase(Locale.ROOT));
      }
    }
    return faults.count() == 0
        ? ""
        : "Bad pixels of the camera, replaced by their neighbours' mean: " + words;
  }

  /**
   * For an image that will be used: the very same where no pixel is bad; else one that the next
   * call overwrites.
   */
  Samples repaired(Samples image) {
    Samples sound = image;
    if (faults != null && faults.count() > 0) {
      copy.copyFrom(image);
      faults.repair(copy);
      sound = copy;
    }
    saturated.watch(sound);
    return sound;
  }

  /** Takes saturated pixels out of a cycle's means, in place, and tells of new ones. */
  QuarterMeans unsaturated(QuarterMeans means, ReductionListener listener, long nowNanos) {
    String found = saturated.news();
    if (!found.isEmpty()) {
      listener.onNote(found, nowNanos);
    }
    saturated.blank(means);
    return means;
  }

  /** The same mean image, repaired in place. */
  Plane repaired(Plane plane) {
    if (faults != null) {
      faults.repair(new FloatSamples(plane.width(), plane.height(), plane.values()));
    }
    return plane;
  }
}

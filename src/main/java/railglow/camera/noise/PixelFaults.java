package railglow.camera.noise;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import railglow.thermal.CountSamples;
import railglow.thermal.FloatSamples;
import railglow.thermal.Samples;

/** The faulty pixels of one camera, as found by a {@link PixelCensus}. Immutable. */
public final class PixelFaults {
  private final int width;
  private final PixelFault[] faults;
  private final int[] bad;
  private final int[][] substitutes;

  /**
   * @param faults one for each pixel, null where it is sound; not copied
   */
  PixelFaults(int width, PixelFault[] faults) {
    this.width = width;
    this.faults = faults;
    List<Integer> indices = new ArrayList<>();
    for (int i = 0; i < faults.length; i++) {
      if (faults[i] != null) {
        indices.add(i);
      }
    }
    this.bad = indices.stream().mapToInt(Integer::intValue).toArray();
    this.substitutes = new int[bad.length][];
    for (int k = 0; k < bad.length; k++) {
      substitutes[k] = nearestSound(bad[k]);
    }
  }

  /** A camera without faulty pixels. */
  public static PixelFaults none(int width, int height) {
    return new PixelFaults(width, new PixelFault[width * height]);
  }

  /** The same camera with only some kinds of faults counted as such. */
  public PixelFaults only(Set<PixelFault> kinds) {
    PixelFault[] kept = new PixelFault[faults.length];
    for (int index : bad) {
      kept[index] = kinds.contains(faults[index]) ? faults[index] : null;
    }
    return new PixelFaults(width, kept);
  }

  public boolean isSound(int index) {
    return faults[index] == null;
  }

  public int count() {
    return bad.length;
  }

  public int count(PixelFault fault) {
    int count = 0;
    for (int index : bad) {
      count += faults[index] == fault ? 1 : 0;
    }
    return count;
  }

  /** The flat indices of the faulty pixels of one kind, ascending. */
  public int[] indices(PixelFault fault) {
    return java.util.Arrays.stream(bad).filter(index -> faults[index] == fault).toArray();
  }

  /**
   * Puts the mean of the nearest sound pixels in the place of each faulty one. A pixel with no
   * sound one within two stays as it is. Allocates nothing.
   */
  public void repair(Samples image) {
    for (int k = 0; k < bad.length; k++) {
      if (substitutes[k].length == 0) {
        continue;
      }
      double sum = 0;
      for (int index : substitutes[k]) {
        sum += image.valueAt(index);
      }
      double mean = sum / substitutes[k].length;
      if (image instanceof FloatSamples floats) {
        floats.values()[bad[k]] = (float) mean;
      } else {
        ((CountSamples) image).counts()[bad[k]] = (short) Math.round(mean);
      }
    }
  }

  private int[] nearestSound(int index) {
    for (int reach = 1; reach <= 2; reach++) {
      List<Integer> found = new ArrayList<>();
      int height = faults.length / width;
      int column = index % width;
      int row = index / width;
      for (int y = Math.max(0, row - reach); y <= Math.min(height - 1, row + reach); y++) {
        for (int x = Math.max(0, column - reach); x <= Math.min(width - 1, column + reach); x++) {
          if (faults[y * width + x] == null) {
            found.add(y * width + x);
          }
        }
      }
      if (!found.isEmpty()) {
        return found.stream().mapToInt(Integer::intValue).toArray();
      }
    }
    return new int[0];
  }
}

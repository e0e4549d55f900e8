package railglow.camera.noise;

import java.util.ArrayList;
import java.util.List;
import railglow.observed.Frame;
import railglow.observed.FrameMark;
import railglow.thermal.Samples;

/**
 * Measures a camera's noise on frames of a still scene without power. Keeps the series of a few
 * hundred pixels and of every row and column. Marked frames are taken too, except damaged and
 * frozen ones, in whose place the one before stands: the series must keep their rhythm. Not
 * thread-safe.
 */
public final class NoiseMeter {
  private static final int SITES = 300;
  private final int width;
  private final int height;
  private final double framesPerSecond;
  private final int[] sites;
  private final List<float[]> series = new ArrayList<>();
  private final double[] rowMeans;
  private final double[] columnMeans;
  private final List<float[]> rows = new ArrayList<>();
  private final List<float[]> columns = new ArrayList<>();
  private final List<Float> means = new ArrayList<>();

  /**
   * @param faults pixels to keep out
   */
  public NoiseMeter(int width, int height, double framesPerSecond, PixelFaults faults) {
    this.width = width;
    this.height = height;
    this.framesPerSecond = framesPerSecond;
    this.rowMeans = new double[height];
    this.columnMeans = new double[width];
    this.sites = sites(width, height, faults);
  }

  public void add(Frame frame) {
    boolean unusable =
        frame.marks().contains(FrameMark.DAMAGED) || frame.marks().contains(FrameMark.FROZEN);
    if (unusable && !series.isEmpty()) {
      series.add(series.get(series.size() - 1));
      rows.add(rows.get(rows.size() - 1));
      columns.add(columns.get(columns.size() - 1));
      means.add(means.get(means.size() - 1));
    } else if (!unusable) {
      take(frame.samples());
    }
  }

  public int frames() {
    return series.size();
  }

  /**
   * The figures so far.
   *
   * @throws IllegalStateException before 16 frames, or without a sound pixel
   */
  public NoiseFigures figures() {
    int frames = series.size();
    if (frames < 16 || sites.length == 0) {
      throw new IllegalStateException(
          "noise needs 16 frames and sound pixels; there are " + frames + " frames");
    }
    SeriesStatistics pixels = new SeriesStatistics(series, 3);
    double pixelVariance = pixels.medianVariance();
    List<Double> averaging = new ArrayList<>();
    List<Double> deviations = new ArrayList<>();
    for (int m = 1; m <= frames / 4; m *= 2) {
      averaging.add(m / framesPerSecond);
      deviations.add(pixels.allanDeviation(m));
    }
    double[] frameMeans = means.stream().mapToDouble(Float::doubleValue).toArray();
    return new NoiseFigures(
        frames,
        frames / framesPerSecond,
        Math.sqrt(pixelVariance),
        Math.sqrt(pixels.medianStepVariance() / 2),
        pixels.lagOneCorrelation(),
        pixels.correlation(0, 1),
        pixels.correlation(0, 2),
        together(new SeriesStatistics(rows, 1).meanVariance(), pixelVariance / width),
        together(new SeriesStatistics(columns, 1).meanVariance(), pixelVariance / height),
        Math.sqrt(SeriesStatistics.variance(frameMeans)),
        averaging.stream().mapToDouble(Double::doubleValue).toArray(),
        deviations.stream().mapToDouble(Double::doubleValue).toArray());
  }

  private void take(Samples image) {
    double mean = lineMeans(image);
    float[] row = new float[height];
    float[] column = new float[width];
    for (int y = 0; y < height; y++) {
      row[y] = (float) (rowMeans[y] - mean);
    }
    for (int x = 0; x < width; x++) {
      column[x] = (float) (columnMeans[x] - mean);
    }
    float[] values = new float[3 * sites.length];
    for (int k = 0; k < sites.length; k++) {
      values[3 * k] = clean(image, sites[k], mean);
      values[3 * k + 1] = clean(image, sites[k] + 1, mean);
      values[3 * k + 2] = clean(image, sites[k] + width, mean);
    }
    series.add(values);
    rows.add(row);
    columns.add(column);
    means.add((float) mean);
  }

  private double lineMeans(Samples image) {
    java.util.Arrays.fill(rowMeans, 0);
    java.util.Arrays.fill(columnMeans, 0);
    int[] columnCounts = new int[width];
    double sum = 0;
    int count = 0;
    for (int y = 0; y < height; y++) {
      int inRow = 0;
      for (int x = 0; x < width; x++) {
        double value = image.valueAt(y * width + x);
        if (value - value == 0) {
          rowMeans[y] += value;
          columnMeans[x] += value;
          columnCounts[x]++;
          inRow++;
          sum += value;
          count++;
        }
      }
      rowMeans[y] /= Math.max(1, inRow);
    }
    for (int x = 0; x < width; x++) {
      columnMeans[x] /= Math.max(1, columnCounts[x]);
    }
    return sum / Math.max(1, count);
  }

  private float clean(Samples image, int index, double mean) {
    double value = image.valueAt(index);
    double cleaned = value - rowMeans[index / width] - columnMeans[index % width] + mean;
    return value - value == 0 ? (float) cleaned : 0;
  }

  /** What lines do together beyond the part that their pixels' own noise leaves in a mean. */
  private static double together(double variance, double ownPart) {
    return Math.sqrt(Math.max(0, variance - ownPart));
  }

  /** Pixels that have a sound neighbour right and below. */
  private static int[] sites(int width, int height, PixelFaults faults) {
    int stride = Math.max(1, width * height / SITES) | 1;
    List<Integer> found = new ArrayList<>();
    for (int i = 0; i + width + 1 < width * height; i += stride) {
      boolean inside = i % width < width - 1;
      if (inside && faults.isSound(i) && faults.isSound(i + 1) && faults.isSound(i + width)) {
        found.add(i);
      }
    }
    return found.stream().mapToInt(Integer::intValue).toArray();
  }
}

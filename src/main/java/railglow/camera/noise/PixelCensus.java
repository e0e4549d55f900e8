package railglow.camera.noise;

import java.util.Arrays;
import railglow.observed.Frame;
import railglow.observed.FrameMark;
import railglow.thermal.Samples;

/**
 * Finds faulty pixels on frames of a still scene without power. Frames with marks take no part. Not
 * thread-safe.
 */
public final class PixelCensus {
  private static final int ENOUGH_FRAMES = 16;
  private static final int CHANGES_TO_JUDGE = 12;
  private static final double FLICKER_FACTOR = 5;
  private static final double OUT_OF_LINE_FACTOR = 4;
  private static final double SATURATED_SHARE = 0.1;
  private final int width;
  private final int height;
  private final double saturationValue;
  private final Samples previous;
  private final double[] mean;
  private final double[] squares;
  private final double[] stepSquares;
  private final int[] changes;
  private final int[] notFinite;
  private final int[] saturated;
  private int frames;

  /**
   * @param like one image of the camera's kind and size
   * @param saturationValue values at or above it are at the end of the scale; may be infinite
   */
  public PixelCensus(Samples like, double saturationValue) {
    this.width = like.width();
    this.height = like.height();
    this.saturationValue = saturationValue;
    this.previous = like.newLike();
    int pixels = width * height;
    this.mean = new double[pixels];
    this.squares = new double[pixels];
    this.stepSquares = new double[pixels];
    this.changes = new int[pixels];
    this.notFinite = new int[pixels];
    this.saturated = new int[pixels];
  }

  public void add(Frame frame) {
    if (frame.marks().contains(FrameMark.DAMAGED)
        || frame.marks().contains(FrameMark.FROZEN)
        || frame.marks().contains(FrameMark.SHUTTER)
        || frame.marks().contains(FrameMark.MOVED)) {
      return;
    }
    Samples image = frame.samples();
    frames++;
    double common = frames == 1 ? 0 : commonStep(image);
    for (int i = 0; i < mean.length; i++) {
      double value = image.valueAt(i);
      if (value - value != 0) {
        notFinite[i]++;
        continue;
      }
      saturated[i] += value >= saturationValue ? 1 : 0;
      double off = value - mean[i];
      mean[i] += off / frames;
      squares[i] += off * (value - mean[i]);
      double step = value - previous.valueAt(i);
      if (frames > 1 && step != 0 && step - step == 0) {
        changes[i]++;
        stepSquares[i] += (step - common) * (step - common);
      }
    }
    previous.copyFrom(image);
  }

  /** Frames that took part. */
  public int frames() {
    return frames;
  }

  /** What is known now; nothing is claimed before 16 frames. */
  public PixelFaults faults() {
    PixelFault[] faults = new PixelFault[mean.length];
    if (frames < ENOUGH_FRAMES) {
      return new PixelFaults(width, faults);
    }
    double usualChanges = median(Arrays.stream(changes).asDoubleStream().toArray());
    double usualSpread = median(squares.clone());
    double usualStep = median(stepSquares.clone());
    double most = FLICKER_FACTOR * FLICKER_FACTOR;
    for (int i = 0; i < faults.length; i++) {
      boolean stuck = changes[i] == 0 && usualChanges >= CHANGES_TO_JUDGE;
      if (saturated[i] > SATURATED_SHARE * frames) {
        faults[i] = PixelFault.SATURATED;
      } else if (stuck || notFinite[i] > frames / 2) {
        faults[i] = PixelFault.DEAD;
      } else if (squares[i] > most * usualSpread && usualSpread > 0
          || stepSquares[i] > most * usualStep && usualStep > 0) {
        faults[i] = PixelFault.FLICKERING;
      }
    }
    markLines(faults, height, width, width, 1);
    markLines(faults, width, height, 1, width);
    return new PixelFaults(width, faults);
  }

  /** The median step of a part of the pixels: what moved together. */
  private double commonStep(Samples image) {
    int stride = Math.max(1, mean.length / 500) | 1;
    double[] steps = new double[(mean.length + stride - 1) / stride];
    for (int k = 0; k < steps.length; k++) {
      double step = image.valueAt(k * stride) - previous.valueAt(k * stride);
      steps[k] = step - step == 0 ? step : 0;
    }
    return median(steps);
  }

  /** Rows (or columns) whose pixels, as a rule, don't lie between those of both neighbours. */
  private void markLines(PixelFault[] faults, int lines, int length, int lineStep, int pixelStep) {
    if (lines < 5) {
      return;
    }
    double[] odd = new double[lines];
    double[] differences = new double[length];
    for (int line = 1; line < lines - 1; line++) {
      for (int k = 0; k < length; k++) {
        int at = line * lineStep + k * pixelStep;
        differences[k] = Math.abs(mean[at] - (mean[at - lineStep] + mean[at + lineStep]) / 2);
      }
      odd[line] = median(differences.clone());
    }
    double usual = median(Arrays.copyOfRange(odd, 1, lines - 1));
    for (int line = 1; line < lines - 1; line++) {
      boolean peak = odd[line] >= odd[line - 1] && odd[line] >= odd[line + 1];
      if (peak && usual > 0 && odd[line] > OUT_OF_LINE_FACTOR * usual) {
        for (int k = 0; k < length; k++) {
          int at = line * lineStep + k * pixelStep;
          faults[at] = faults[at] == null ? PixelFault.OUT_OF_LINE : faults[at];
        }
      }
    }
  }

  private static double median(double[] values) {
    Arrays.sort(values);
    return values[values.length / 2];
  }
}

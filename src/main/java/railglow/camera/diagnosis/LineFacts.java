package railglow.camera.diagnosis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import railglow.thermal.Samples;

/** What rows and columns of one image are like. */
final class LineFacts {
  private final Samples image;
  private final double[] sorted;

  private LineFacts(Samples image, double[] sorted) {
    this.image = image;
    this.sorted = sorted;
  }

  static LineFacts of(Samples image) {
    double[] finite = new double[image.width() * image.height()];
    int count = 0;
    for (int i = 0; i < finite.length; i++) {
      double value = image.valueAt(i);
      if (value - value == 0) {
        finite[count++] = value;
      }
    }
    double[] sorted = Arrays.copyOf(finite, count);
    Arrays.sort(sorted);
    return new LineFacts(image, sorted);
  }

  boolean isFlat() {
    return sorted.length == 0 || sorted[0] == sorted[sorted.length - 1];
  }

  int notFinite() {
    return image.width() * image.height() - sorted.length;
  }

  double median() {
    return sorted[sorted.length / 2];
  }

  List<Integer> constantRows() {
    return constant(image.height(), image.width(), image.width(), 1);
  }

  List<Integer> constantColumns() {
    return constant(image.width(), image.height(), 1, image.width());
  }

  /** Rows whose pixels differ from both rows beside far more than rows do as a rule. */
  List<Integer> oddRows(double factor) {
    int rows = image.height();
    double[] step = new double[rows - 1 < 1 ? 1 : rows - 1];
    for (int row = 0; row + 1 < rows; row++) {
      step[row] = medianStep(row);
    }
    double[] ordered = step.clone();
    Arrays.sort(ordered);
    double usual = Math.max(ordered[ordered.length / 2], 1e-9);
    List<Integer> odd = new ArrayList<>();
    for (int row = 0; row < rows; row++) {
      double above = row == 0 ? Double.POSITIVE_INFINITY : step[row - 1];
      double below = row == rows - 1 ? Double.POSITIVE_INFINITY : step[row];
      if (rows > 2 && Math.min(above, below) > factor * usual) {
        odd.add(row);
      }
    }
    return odd;
  }

  /** {@code "0-3, 7"}. */
  static String ranges(List<Integer> ascending) {
    StringBuilder text = new StringBuilder();
    int i = 0;
    while (i < ascending.size()) {
      int from = ascending.get(i);
      int to = from;
      while (i + 1 < ascending.size() && ascending.get(i + 1) == to + 1) {
        to = ascending.get(++i);
      }
      text.append(text.isEmpty() ? "" : ", ").append(from).append(to > from ? "-" + to : "");
      i++;
    }
    return text.toString();
  }

  private List<Integer> constant(int lines, int length, int lineStep, int pixelStep) {
    List<Integer> found = new ArrayList<>();
    for (int line = 0; line < lines; line++) {
      boolean same = length > 1;
      for (int k = 1; k < length && same; k++) {
        int at = line * lineStep;
        same = image.valueAt(at + k * pixelStep) == image.valueAt(at);
      }
      if (same) {
        found.add(line);
      }
    }
    return found;
  }

  private double medianStep(int row) {
    double[] steps = new double[image.width()];
    for (int x = 0; x < steps.length; x++) {
      int at = row * image.width() + x;
      double step = Math.abs(image.valueAt(at + image.width()) - image.valueAt(at));
      steps[x] = step - step == 0 ? step : 0;
    }
    Arrays.sort(steps);
    return steps[steps.length / 2];
  }
}

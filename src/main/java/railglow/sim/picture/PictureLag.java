package railglow.sim.picture;

/**
 * What follows a picture as a body of first order, pixel by pixel: a detector, or a coat over a
 * board. Exactly for a picture that changes evenly from one look to the next: with x from x0 to x1
 * in T, y1 = x1 + (y0 - x0) e - (x1 - x0) (tau/T) (1 - e), where e = exp(-T/tau). Not thread-safe.
 */
final class PictureLag {
  private final double timeConstantSeconds;
  private final float[] followed;
  private final float[] lagged;
  private boolean begun;
  private double lastSeconds;

  /**
   * @param timeConstantSeconds 0 or less for what follows at once
   */
  PictureLag(int pixels, double timeConstantSeconds) {
    this.timeConstantSeconds = timeConstantSeconds;
    followed = new float[timeConstantSeconds > 0 ? pixels : 0];
    lagged = new float[followed.length];
  }

  /**
   * Puts what is seen late in the place of what is there now; the first time both are the same.
   *
   * @param seconds ascending
   */
  void follow(double seconds, float[] values) {
    if (followed.length == 0) {
      return;
    }
    double passed = seconds - lastSeconds;
    lastSeconds = seconds;
    if (!begun) {
      begun = true;
      System.arraycopy(values, 0, followed, 0, values.length);
      System.arraycopy(values, 0, lagged, 0, values.length);
      return;
    }
    float left = (float) Math.exp(-passed / timeConstantSeconds);
    float slope = passed > 0 ? (float) (timeConstantSeconds / passed) * (1 - left) : 1;
    for (int i = 0; i < values.length; i++) {
      float next = values[i];
      lagged[i] = next + (lagged[i] - followed[i]) * left - (next - followed[i]) * slope;
      followed[i] = next;
      values[i] = lagged[i];
    }
  }
}

package railglow.sim.picture;

/**
 * The scene as a camera sees it that was pushed: all of it moved, what comes into view as the
 * border was. The camera's own pixels stay where they are. Not thread-safe.
 */
public final class PushedView {
  private final int width;
  private final int height;
  private final float[] before;

  public PushedView(int width, int height) {
    this.width = width;
    this.height = height;
    this.before = new float[width * height];
  }

  /** Moves an image in place by whole pixels. */
  public void push(float[] image, int right, int down) {
    System.arraycopy(image, 0, before, 0, before.length);
    for (int row = 0; row < height; row++) {
      int from = Math.max(0, Math.min(height - 1, row - down));
      for (int column = 0; column < width; column++) {
        int source = Math.max(0, Math.min(width - 1, column - right));
        image[row * width + column] = before[from * width + source];
      }
    }
  }
}

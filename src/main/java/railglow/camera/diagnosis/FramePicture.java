package railglow.camera.diagnosis;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Arrays;
import javax.imageio.ImageIO;
import railglow.thermal.Samples;

/** One frame as a grey picture: warm is bright, one per cent at either end is cut off. Pure. */
public final class FramePicture {
  private static final double CUT = 0.01;

  private FramePicture() {}

  /**
   * Draws.
   *
   * @param times how many picture pixels stand for one camera pixel along each side, at least 1
   */
  public static BufferedImage draw(Samples image, int times) {
    int pixels = image.width() * image.height();
    double[] sorted = new double[pixels];
    int count = 0;
    for (int i = 0; i < pixels; i++) {
      double value = image.valueAt(i);
      if (value - value == 0) {
        sorted[count++] = value;
      }
    }
    Arrays.sort(sorted, 0, count);
    double low = count == 0 ? 0 : sorted[(int) (CUT * (count - 1))];
    double high = count == 0 ? 1 : sorted[(int) ((1 - CUT) * (count - 1))];
    double range = high > low ? high - low : 1;
    BufferedImage picture =
        new BufferedImage(
            image.width() * times, image.height() * times, BufferedImage.TYPE_BYTE_GRAY);
    for (int y = 0; y < picture.getHeight(); y++) {
      for (int x = 0; x < picture.getWidth(); x++) {
        double value = image.valueAt(y / times * image.width() + x / times);
        double level = value - value == 0 ? 255 * (value - low) / range : 0;
        picture.getRaster().setSample(x, y, 0, (int) Math.max(0, Math.min(255, level)));
      }
    }
    return picture;
  }

  /** The same as the bytes of a PNG file. */
  public static byte[] png(Samples image, int times) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      ImageIO.write(draw(image, times), "png", bytes);
    } catch (IOException e) {
      throw new UncheckedIOException("a picture could not be written into memory", e);
    }
    return bytes.toByteArray();
  }
}

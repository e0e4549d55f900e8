package railglow.camera;

import java.awt.image.DataBuffer;
import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import railglow.thermal.CountSamples;
import railglow.thermal.FloatSamples;
import railglow.thermal.Samples;

/**
 * The pages of a TIFF file: one channel, 8 or 16 bits or 32-bit floats, all of one size. Not
 * thread-safe.
 */
public final class TiffFrames implements RecordedFrames {
  private final Path path;
  private final Orientation orientation;
  private final ImageInputStream input;
  private final ImageReader reader;
  private final int count;
  private final int width;
  private final int height;
  private final boolean floats;

  private TiffFrames(Path path, Orientation orientation, ImageInputStream input, ImageReader reader)
      throws IOException {
    this.path = path;
    this.orientation = orientation;
    this.input = input;
    this.reader = reader;
    this.count = reader.getNumImages(true);
    this.width = reader.getWidth(0);
    this.height = reader.getHeight(0);
    Raster first = raster(0);
    this.floats = first.getTransferType() == DataBuffer.TYPE_FLOAT;
  }

  /**
   * Opens a file.
   *
   * @throws IOException with one sentence when it is absent or not such a file
   */
  public static TiffFrames open(Path path, Orientation orientation) throws IOException {
    if (!Files.isRegularFile(path)) {
      throw new IOException(path + " does not exist");
    }
    ImageInputStream input = ImageIO.createImageInputStream(path.toFile());
    Iterator<ImageReader> readers = ImageIO.getImageReadersByFormatName("tiff");
    ImageReader reader = readers.next();
    reader.setInput(input);
    try {
      return new TiffFrames(path, orientation, input, reader);
    } catch (IOException | RuntimeException e) {
      reader.dispose();
      input.close();
      throw new IOException(path + " is not a TIFF file of frames: " + e.getMessage(), e);
    }
  }

  @Override
  public String description() {
    return path.toString();
  }

  @Override
  public int count() {
    return count;
  }

  @Override
  public Samples newSamples() {
    int laidWidth = orientation.swapsSides() ? height : width;
    int laidHeight = orientation.swapsSides() ? width : height;
    return floats
        ? new FloatSamples(laidWidth, laidHeight)
        : new CountSamples(laidWidth, laidHeight);
  }

  @Override
  public void read(int index, Samples into) throws IOException {
    java.util.Objects.checkIndex(index, count);
    Raster page = raster(index);
    for (int row = 0; row < height; row++) {
      for (int column = 0; column < width; column++) {
        int to = orientation.target(column, row, width, height);
        if (into instanceof FloatSamples image) {
          image.values()[to] = page.getSampleFloat(column, row, 0);
        } else {
          ((CountSamples) into).counts()[to] = (short) page.getSample(column, row, 0);
        }
      }
    }
  }

  @Override
  public void close() {
    reader.dispose();
    try {
      input.close();
    } catch (IOException e) {
      // Only read from: nothing can be lost.
      return;
    }
  }

  private Raster raster(int index) throws IOException {
    Raster page;
    try {
      page =
          reader.canReadRaster() ? reader.readRaster(index, null) : reader.read(index).getRaster();
    } catch (IOException | RuntimeException e) {
      throw new IOException(path + " can't be read at page " + index + ": " + e.getMessage(), e);
    }
    if (page.getNumBands() != 1) {
      throw new IOException(
          path + " has " + page.getNumBands() + " channels at page " + index + "; one is wanted");
    }
    if (page.getWidth() != width || page.getHeight() != height) {
      throw new IOException(
          path
              + " changes size at page "
              + index
              + ": "
              + page.getWidth()
              + " x "
              + page.getHeight()
              + " after "
              + width
              + " x "
              + height);
    }
    return page;
  }
}

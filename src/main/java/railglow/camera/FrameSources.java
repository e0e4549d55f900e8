package railglow.camera;

import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Locale;
import railglow.link.IncomingBytes;
import railglow.link.IncomingBytesFromChild;
import railglow.link.IncomingBytesFromTcp;
import railglow.thermal.Samples;
import railglow.time.MonotonicClock;

/**
 * Opens the source an address names: {@code tcp://host:port}, {@code exec:program and arguments} or
 * {@code file:path} (.npy, .tif, .tiff, anything else as raw frames).
 */
public final class FrameSources {
  private static final int CONNECT_MILLIS = 2000;
  private static final String TCP = "tcp://";
  private static final String EXEC = "exec:";
  private static final String FILE = "file:";

  private FrameSources() {}

  /**
   * Opens a camera. A file plays in step with the clock at the descriptor's rate.
   *
   * @throws IOException with one sentence that says what is wrong and what to do
   */
  public static FrameSource open(String address, CameraDescriptor camera, MonotonicClock clock)
      throws IOException {
    if (address.startsWith(FILE)) {
      return RecordedSource.paced(
          openFile(address.substring(FILE.length()), camera), camera.framesPerSecond(), clock);
    }
    return new RawStreamSource(openStream(address), camera, clock);
  }

  /**
   * As {@link #open}, but a stream that ends or breaks is opened again, for as long as it takes.
   * The first opening must succeed.
   *
   * @throws IOException with one sentence that says what is wrong and what to do
   */
  public static FrameSource openLasting(
      String address, CameraDescriptor camera, MonotonicClock clock) throws IOException {
    if (address.startsWith(FILE)) {
      return open(address, camera, clock);
    }
    return ReopeningSource.open(
        () -> open(address, camera, clock), camera.framesPerSecond(), clock);
  }

  /**
   * Opens recorded frames.
   *
   * @param path .npy, .tif or .tiff; anything else is read as raw frames of the camera's layout
   * @throws IOException with one sentence that says what is wrong and what to do
   */
  public static RecordedFrames openFile(String path, CameraDescriptor camera) throws IOException {
    Path file = path(path);
    String name = path.toLowerCase(Locale.ROOT);
    Orientation orientation = camera.layout().orientation();
    RecordedFrames frames;
    if (name.endsWith(".npy")) {
      frames = RawFileFrames.openNpy(file, orientation, camera.scale());
    } else if (name.endsWith(".tif") || name.endsWith(".tiff")) {
      if (camera.scale().hotIsDark()) {
        throw new IOException(
            file + " can't be turned over for a kelvin-per-count below zero; save it as .npy");
      }
      frames = TiffFrames.open(file, orientation);
    } else {
      return RawFileFrames.openRaw(file, camera.layout(), camera.scale());
    }
    Samples image = frames.newSamples();
    CameraProfile profile = camera.profile();
    if (image.width() != profile.width() || image.height() != profile.height()) {
      frames.close();
      throw new IOException(
          file
              + " holds images of "
              + image.width()
              + " x "
              + image.height()
              + " pixels, but the descriptor of "
              + camera.name()
              + " says "
              + profile.width()
              + " x "
              + profile.height());
    }
    return frames;
  }

  private static IncomingBytes openStream(String address) throws IOException {
    if (address.startsWith(TCP)) {
      try {
        URI uri = new URI(address);
        if (uri.getHost() != null && uri.getPort() > 0) {
          return IncomingBytesFromTcp.connect(uri.getHost(), uri.getPort(), CONNECT_MILLIS);
        }
      } catch (URISyntaxException e) {
        throw unusable(address, "write tcp://host:port", e);
      }
      throw unusable(address, "write tcp://host:port", null);
    }
    if (address.startsWith(EXEC)) {
      try {
        return IncomingBytesFromChild.start(CommandLine.split(address.substring(EXEC.length())));
      } catch (IllegalArgumentException e) {
        throw unusable(address, e.getMessage(), e);
      }
    }
    throw unusable(address, "write tcp://host:port, exec:program arguments, or file:path", null);
  }

  private static Path path(String text) throws IOException {
    try {
      return Path.of(text);
    } catch (InvalidPathException e) {
      throw new IOException("'" + text + "' can't be the name of a file", e);
    }
  }

  private static IOException unusable(String address, String advice, Exception cause) {
    return new IOException("'" + address + "' is no address of a camera: " + advice, cause);
  }
}

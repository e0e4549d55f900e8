package railglow.link;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import railglow.link.CannotOpenException.Reason;

/** Plain reads and writes of a device file. */
final class DeviceFileWay implements BlockingWay {
  private static final Logger LOG = LoggerFactory.getLogger(DeviceFileWay.class);
  private final String path;
  private FileChannel channel;

  DeviceFileWay(String path) {
    this.path = path;
  }

  @Override
  public void open() throws IOException {
    try {
      channel = FileChannel.open(Path.of(path), StandardOpenOption.READ, StandardOpenOption.WRITE);
    } catch (NoSuchFileException e) {
      throw new CannotOpenException(
          Reason.NOT_FOUND,
          "There is no device " + path + ": is the instrument plugged in and switched on?",
          e);
    } catch (AccessDeniedException e) {
      throw new CannotOpenException(
          Reason.PERMISSION_DENIED,
          "You may not use " + path + ": allow it with a udev rule for this instrument.",
          e);
    } catch (IOException e) {
      if (String.valueOf(e.getMessage()).contains("busy")) {
        throw new CannotOpenException(
            Reason.BUSY, path + " is in use by another program: close that one first.", e);
      }
      throw e;
    }
  }

  @Override
  public int available() {
    return 0;
  }

  @Override
  public int read(byte[] into) throws IOException {
    try {
      return channel.read(ByteBuffer.wrap(into));
    } catch (IOException e) {
      // the driver gives up after its own time-out; ours counts
      if (String.valueOf(e.getMessage()).contains("timed out")) {
        return 0;
      }
      throw e;
    }
  }

  @Override
  public boolean takesAtOnce() {
    return false;
  }

  @Override
  public void write(byte[] bytes) throws IOException {
    ByteBuffer buffer = ByteBuffer.wrap(bytes);
    while (buffer.hasRemaining()) {
      channel.write(buffer);
    }
  }

  @Override
  public boolean writeWithoutMemory(ReadyMessage message) throws IOException {
    ByteBuffer buffer = message.fromTheStart();
    if (channel != null) {
      channel.write(buffer);
    }
    return !buffer.hasRemaining();
  }

  @Override
  public void close() {
    try {
      if (channel != null) {
        channel.close();
      }
    } catch (IOException e) {
      LOG.debug("closing {}: {}", path, e.getMessage());
    }
  }
}

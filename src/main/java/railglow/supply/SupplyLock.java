package railglow.supply;

import java.io.IOException;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.Locale;

/**
 * Keeps a second controller away from a supply on this machine. The operating system lets the lock
 * go when the process ends in whatever way; the file stays and tells nothing then.
 */
public final class SupplyLock implements AutoCloseable {
  private static final int MOST_BYTES = 200;
  private final FileChannel channel;
  private final FileLock lock;

  private SupplyLock(FileChannel channel, FileLock lock) {
    this.channel = channel;
    this.lock = lock;
  }

  /** As {@link #take(SupplyAddress, Instant, Path)} in the machine's folder for such files. */
  public static SupplyLock take(SupplyAddress address, Instant now) throws IOException {
    return take(address, now, Path.of(System.getProperty("java.io.tmpdir"), "railglow-locks"));
  }

  /**
   * @param now written into the file for whoever is refused
   * @throws SupplyInUseException if another controller has it, named
   * @throws IOException with a sentence, when no lock file can be written
   */
  public static SupplyLock take(SupplyAddress address, Instant now, Path folder)
      throws IOException {
    Path file = folder.resolve(fileName(address));
    FileChannel channel = open(folder, file);
    try {
      FileLock lock = tryLock(channel);
      if (lock == null) {
        throw new SupplyInUseException(address, holder(file));
      }
      String text = "process " + ProcessHandle.current().pid() + " since " + now;
      channel.truncate(0);
      channel.write(ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8)), 0);
      channel.force(true);
      return new SupplyLock(channel, lock);
    } catch (IOException | RuntimeException e) {
      channel.close();
      throw e;
    }
  }

  @Override
  public void close() throws IOException {
    try {
      lock.release();
    } finally {
      channel.close();
    }
  }

  private static FileChannel open(Path folder, Path file) throws IOException {
    try {
      if (Files.notExists(folder)) {
        Files.createDirectories(folder);
        openToAll(folder);
      }
      boolean fresh = Files.notExists(file);
      FileChannel channel =
          FileChannel.open(
              file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
      if (fresh) {
        openToAll(file);
      }
      return channel;
    } catch (IOException e) {
      throw new IOException("the lock file " + file + " can't be written: " + e.getMessage(), e);
    }
  }

  /** So that another user of the machine is refused by name and not by the file's rights. */
  private static void openToAll(Path path) {
    path.toFile().setReadable(true, false);
    path.toFile().setWritable(true, false);
    if (Files.isDirectory(path)) {
      path.toFile().setExecutable(true, false);
    }
  }

  private static FileLock tryLock(FileChannel channel) throws IOException {
    try {
      return channel.tryLock();
    } catch (OverlappingFileLockException e) {
      return null;
    }
  }

  private static String holder(Path file) throws IOException {
    byte[] bytes = Files.readAllBytes(file);
    int length = Math.min(bytes.length, MOST_BYTES);
    String text = new String(bytes, 0, length, StandardCharsets.UTF_8).strip();
    return text.isEmpty() ? "another process" : text;
  }

  /** The same supply under two spellings has one name: hosts are resolved, links followed. */
  private static String fileName(SupplyAddress address) throws IOException {
    String place = address.place();
    String name;
    switch (address.kind()) {
      case TCP, BRIDGE -> {
        try {
          place = InetAddress.getByName(place).getHostAddress();
        } catch (UnknownHostException e) {
          place = place.toLowerCase(Locale.ROOT);
        }
        name = "tcp-" + place + "-" + address.number();
      }
      default -> {
        Path path = Path.of(place);
        name = "device-" + (Files.exists(path) ? path.toRealPath() : path.toAbsolutePath());
      }
    }
    return name.replaceAll("[^A-Za-z0-9.-]", "_") + ".lock";
  }
}

package railglow.link;

import java.io.IOException;
import java.net.ConnectException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.NoRouteToHostException;
import java.net.StandardSocketOptions;
import java.net.UnknownHostException;
import java.nio.ByteBuffer;
import java.nio.channels.SelectionKey;
import java.nio.channels.Selector;
import java.nio.channels.SocketChannel;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import railglow.link.CannotOpenException.Reason;
import railglow.time.MonotonicClock;
import railglow.time.Waits;

/** A raw TCP connection, as instruments offer on port 5025. */
public final class TcpPort implements BytePort {
  private static final Logger LOG = LoggerFactory.getLogger(TcpPort.class);
  private final String host;
  private final int port;
  private final boolean bridged;
  private final MonotonicClock clock;
  private InetAddress address;
  private SocketChannel channel;
  private Selector selector;
  private SelectionKey key;
  private boolean interrupted;

  /**
   * @param host name or address
   * @param port 1..65535
   * @param bridged whether a box between network and a serial line answers, which may hand a late
   *     reply to the next connection
   */
  public TcpPort(String host, int port, boolean bridged, MonotonicClock clock) {
    if (port < 1 || port > 65535) {
      throw new IllegalArgumentException("TCP port " + port + " is not in 1..65535");
    }
    this.host = host;
    this.port = port;
    this.bridged = bridged;
    this.clock = clock;
  }

  @Override
  public Traits traits() {
    return new Traits(!bridged, false, false);
  }

  @Override
  public void open(long timeoutNanos) throws LinkException {
    close();
    long deadline = clock.nanos() + timeoutNanos;
    resolve(timeoutNanos);
    holdInterrupt();
    try {
      channel = SocketChannel.open();
      channel.configureBlocking(false);
      channel.setOption(StandardSocketOptions.TCP_NODELAY, true);
      channel.setOption(StandardSocketOptions.SO_KEEPALIVE, true);
      selector = Selector.open();
      key = channel.register(selector, SelectionKey.OP_CONNECT);
      boolean connected = channel.connect(new InetSocketAddress(address, port));
      while (!connected) {
        if (!ready(deadline)) {
          throw new CannotOpenException(
              Reason.NO_ANSWER,
              "Nothing answers at "
                  + description()
                  + ": check the address, the cable and that the instrument is on.",
              null);
        }
        connected = channel.finishConnect();
      }
    } catch (IOException e) {
      close();
      throw e instanceof LinkException link ? link : cannotOpen(e);
    } finally {
      handBackInterrupt();
    }
  }

  private void resolve(long timeoutNanos) throws CannotOpenException {
    if (address != null) {
      return;
    }
    try (BoundedCalls calls = new BoundedCalls("resolve-" + host, clock)) {
      Optional<InetAddress> found =
          calls.await(calls.start(() -> InetAddress.getByName(host)), timeoutNanos);
      address = found.orElseThrow(() -> new UnknownHostException(host));
    } catch (IOException e) {
      throw new CannotOpenException(
          Reason.UNKNOWN_HOST,
          "There is no host '" + host + "': check the name, or give its address.",
          e);
    }
  }

  private CannotOpenException cannotOpen(IOException e) {
    if (e instanceof NoRouteToHostException || String.valueOf(e.getMessage()).contains("unreach")) {
      return new CannotOpenException(
          Reason.UNREACHABLE,
          description() + " can't be reached from this machine: check the network.",
          e);
    }
    if (e instanceof ConnectException) {
      return new CannotOpenException(
          Reason.REFUSED,
          description()
              + " refused the connection: check the port number, that remote control is on, and"
              + " that no other program holds it.",
          e);
    }
    return new CannotOpenException(
        Reason.OTHER, description() + " can't be opened: " + e.getMessage(), e);
  }

  /** Waits until the channel is ready for what its key asks; false if not in time. */
  private boolean ready(long deadline) throws IOException {
    while (true) {
      long left = deadline - clock.nanos();
      int selected =
          left <= 0 ? selector.selectNow() : selector.select((left + 999_999) / 1_000_000);
      selector.selectedKeys().clear();
      holdInterrupt();
      if (selected > 0) {
        return true;
      }
      if (left <= 0) {
        return false;
      }
    }
  }

  /** A pending interrupt would close the channel and end its waits: keeps it for the caller. */
  private void holdInterrupt() {
    interrupted |= Thread.interrupted();
  }

  private void handBackInterrupt() {
    if (interrupted) {
      interrupted = false;
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public int write(byte[] bytes, long timeoutNanos) throws LinkException {
    requireOpen();
    long deadline = clock.nanos() + timeoutNanos;
    ByteBuffer buffer = ByteBuffer.wrap(bytes);
    holdInterrupt();
    try {
      channel.write(buffer);
      while (buffer.hasRemaining()) {
        key.interestOps(SelectionKey.OP_WRITE);
        if (!ready(deadline)) {
          break;
        }
        channel.write(buffer);
      }
      return buffer.position();
    } catch (IOException e) {
      throw lost(e);
    } finally {
      handBackInterrupt();
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
  public int read(byte[] into, long timeoutNanos) throws LinkException {
    requireOpen();
    long deadline = clock.nanos() + timeoutNanos;
    ByteBuffer buffer = ByteBuffer.wrap(into);
    int length;
    holdInterrupt();
    try {
      length = channel.read(buffer);
      if (length == 0 && timeoutNanos > 0) {
        key.interestOps(SelectionKey.OP_READ);
        length = ready(deadline) ? channel.read(buffer) : 0;
      }
    } catch (IOException e) {
      throw lost(e);
    } finally {
      handBackInterrupt();
    }
    if (length < 0) {
      throw new LinkLostException(description() + " closed the connection", null);
    }
    return length;
  }

  private LinkLostException lost(IOException e) {
    return new LinkLostException(
        "the connection to " + description() + " broke: " + e.getMessage(), e);
  }

  private void requireOpen() throws LinkLostException {
    if (channel == null || !channel.isOpen()) {
      throw new LinkLostException(description() + " is not open", null);
    }
  }

  @Override
  public void idle(long nanos) {
    Waits.nanos(nanos);
  }

  @Override
  public String description() {
    return "tcp " + host + ":" + port;
  }

  @Override
  public void close() {
    holdInterrupt();
    try {
      takeUnread();
    } catch (IOException e) {
      LOG.debug("ending {}: {}", description(), e.getMessage());
    }
    try {
      if (channel != null) {
        channel.close();
      }
      if (selector != null) {
        selector.close();
      }
    } catch (IOException e) {
      LOG.debug("closing {}: {}", description(), e.getMessage());
    }
    channel = null;
    selector = null;
    handBackInterrupt();
  }

  /**
   * Closing with unread bytes would reset the connection, and a reset may make the other end throw
   * away what it has not read yet: the message that says off.
   */
  private void takeUnread() throws IOException {
    if (channel != null && channel.isConnected()) {
      channel.shutdownOutput();
      ByteBuffer unread = ByteBuffer.allocate(4096);
      for (int i = 0; i < 16 && channel.read(unread.clear()) > 0; i++) {
        LOG.debug("{} bytes from {} were not asked for", unread.position(), description());
      }
    }
  }
}

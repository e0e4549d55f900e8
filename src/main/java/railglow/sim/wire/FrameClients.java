package railglow.sim.wire;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentHashMap;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Those who receive the camera's frames: clients of a TCP port and plain streams. A client that
 * reads too slowly loses frames; it never holds the others up. Thread-safe.
 */
public final class FrameClients implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(FrameClients.class);
  private static final int QUEUED_FRAMES = 64;
  private final ServerSocket listening;
  private final Set<Client> clients = ConcurrentHashMap.newKeySet();

  private FrameClients(ServerSocket listening) {
    this.listening = listening;
  }

  /**
   * @param port 0 for any that is free
   */
  public static FrameClients start(int port) throws IOException {
    ServerSocket socket = new ServerSocket();
    socket.setReuseAddress(true);
    socket.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), port));
    FrameClients frames = new FrameClients(socket);
    SupplyServer.daemon(frames::accept, "sim-camera-accept");
    return frames;
  }

  public int port() {
    return listening.getLocalPort();
  }

  /** Also sends to a stream, such as a process's standard output, until it breaks. */
  public void add(OutputStream stream) {
    new Client(stream, stream).start();
  }

  /** Hands one packet to everybody; it must not be changed afterwards. */
  public void send(byte[] packet) {
    for (Client client : clients) {
      client.offer(packet);
    }
  }

  /** Closes all connections; new ones are accepted. */
  public void dropClients() {
    List.copyOf(clients).forEach(Client::close);
  }

  private void accept() {
    while (!listening.isClosed()) {
      try {
        Socket socket = listening.accept();
        socket.setTcpNoDelay(true);
        new Client(socket.getOutputStream(), socket).start();
      } catch (IOException e) {
        LOG.debug("the simulated camera accepts no more: {}", e.toString());
      }
    }
  }

  @Override
  public void close() {
    SupplyServer.closeQuietly(listening);
    dropClients();
  }

  private final class Client {
    private static final byte[] END = new byte[0];
    private final BlockingQueue<byte[]> queue = new ArrayBlockingQueue<>(QUEUED_FRAMES);
    private final OutputStream out;
    private final AutoCloseable connection;

    Client(OutputStream out, AutoCloseable connection) {
      this.out = out;
      this.connection = connection;
    }

    void start() {
      clients.add(this);
      SupplyServer.daemon(this::write, "sim-camera-client");
    }

    void offer(byte[] packet) {
      queue.offer(packet);
    }

    private void write() {
      try {
        for (byte[] packet = queue.take(); packet != END; packet = queue.take()) {
          out.write(packet);
          out.flush();
        }
      } catch (IOException e) {
        LOG.debug("a receiver of frames left: {}", e.toString());
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      } finally {
        clients.remove(this);
        SupplyServer.closeQuietly(connection);
      }
    }

    void close() {
      clients.remove(this);
      queue.clear();
      queue.offer(END);
      SupplyServer.closeQuietly(connection);
    }
  }
}

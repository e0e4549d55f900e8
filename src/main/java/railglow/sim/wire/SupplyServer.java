package railglow.sim.wire;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import railglow.sim.fault.FaultKind;
import railglow.sim.fault.FaultSwitches;
import railglow.time.MonotonicClock;

/**
 * Serves the supply's lines on a raw TCP socket of the loopback interface, to several clients at a
 * time. Thread-safe.
 */
public final class SupplyServer implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(SupplyServer.class);
  private final ServerSocket listening;
  private final LineService service;
  private final FaultSwitches faults;
  private final WireHabits habits;
  private final MonotonicClock clock;
  private final Set<Socket> clients = ConcurrentHashMap.newKeySet();

  private SupplyServer(
      ServerSocket listening,
      LineService service,
      FaultSwitches faults,
      WireHabits habits,
      MonotonicClock clock) {
    this.listening = listening;
    this.service = service;
    this.faults = faults;
    this.habits = habits;
    this.clock = clock;
  }

  /**
   * @param port 0 for any that is free
   * @throws IOException when the port is taken
   */
  public static SupplyServer start(
      int port, LineService service, FaultSwitches faults, WireHabits habits, MonotonicClock clock)
      throws IOException {
    ServerSocket socket = new ServerSocket();
    socket.setReuseAddress(true);
    socket.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), port));
    SupplyServer server = new SupplyServer(socket, service, faults, habits, clock);
    daemon(server::accept, "sim-supply-accept");
    return server;
  }

  public int port() {
    return listening.getLocalPort();
  }

  /** Closes all connections; new ones are accepted. */
  public void dropClients() {
    List.copyOf(clients).forEach(SupplyServer::closeQuietly);
  }

  private void accept() {
    while (!listening.isClosed()) {
      try {
        Socket client = listening.accept();
        if (faults.isActive(FaultKind.REFUSE_CONNECTION, clock.nanos())) {
          client.close();
          continue;
        }
        client.setTcpNoDelay(true);
        clients.add(client);
        daemon(() -> converse(client), "sim-supply-client");
      } catch (IOException e) {
        LOG.debug("the simulated supply accepts no more: {}", e.toString());
      }
    }
  }

  private void converse(Socket client) {
    try {
      new LineConversation(
              client.getInputStream(), client.getOutputStream(), service, faults, habits, clock)
          .serve();
    } catch (IOException e) {
      LOG.debug("a controller's connection ended: {}", e.toString());
    } finally {
      clients.remove(client);
      closeQuietly(client);
    }
  }

  static void daemon(Runnable work, String name) {
    Thread thread = new Thread(work, name);
    thread.setDaemon(true);
    thread.start();
  }

  static void closeQuietly(AutoCloseable closeable) {
    try {
      closeable.close();
    } catch (Exception e) {
      LOG.debug("closing failed: {}", e.toString());
    }
  }

  @Override
  public void close() {
    closeQuietly(listening);
    dropClients();
  }
}

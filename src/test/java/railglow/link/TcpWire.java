package railglow.link;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import railglow.time.MonotonicClock;
import railglow.time.SystemClock;
import railglow.time.Waits;

final class TcpWire implements TestWire {
  private final ServerSocket server;
  private final BytePort port;
  private final List<Socket> connections = new CopyOnWriteArrayList<>();

  TcpWire(ScriptedInstrument instrument) throws IOException {
    server = new ServerSocket(0, 5, InetAddress.getLoopbackAddress());
    port = Ports.tcp("127.0.0.1", server.getLocalPort(), SystemClock.INSTANCE);
    Thread accepting =
        new Thread(
            () -> {
              try {
                while (true) {
                  Socket socket = server.accept();
                  socket.setTcpNoDelay(true);
                  connections.add(socket);
                  StreamWire.serve(instrument, socket.getInputStream(), socket.getOutputStream());
                }
              } catch (IOException e) {
                // the server was closed: the test is over
                return;
              }
            },
            "accept");
    accepting.setDaemon(true);
    accepting.start();
  }

  int portNumber() {
    return server.getLocalPort();
  }

  @Override
  public BytePort port() {
    return port;
  }

  @Override
  public MonotonicClock clock() {
    return SystemClock.INSTANCE;
  }

  private Socket last() {
    for (int i = 0; i < 2000 && connections.isEmpty(); i++) {
      Waits.nanos(1_000_000);
    }
    return connections.get(connections.size() - 1);
  }

  @Override
  public void sendUnasked(String text) throws IOException {
    last().getOutputStream().write(text.getBytes(StandardCharsets.ISO_8859_1));
  }

  @Override
  public void cut() throws IOException {
    last().close();
  }

  @Override
  public void close() throws IOException {
    port.close();
    server.close();
    for (Socket socket : connections) {
      socket.close();
    }
  }
}

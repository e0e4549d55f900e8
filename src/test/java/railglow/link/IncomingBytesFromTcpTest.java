package railglow.link;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class IncomingBytesFromTcpTest extends IncomingBytesContract {
  private ServerSocket server;

  @AfterEach
  void stopServing() throws IOException {
    if (server != null) {
      server.close();
    }
  }

  @Override
  IncomingBytes thatGives(byte[] bytes) throws IOException {
    return served(bytes, true);
  }

  @Override
  IncomingBytes thatIsSilent() throws IOException {
    return served(new byte[0], false);
  }

  @Test
  void nobodyListeningIsOneSentence() throws IOException {
    int port;
    try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      port = free.getLocalPort();
    }
    IOException e =
        assertThrows(IOException.class, () -> IncomingBytesFromTcp.connect("127.0.0.1", port, 500));
    assertTrue(e.getMessage().startsWith("nothing serves a stream at 127.0.0.1:" + port));
    assertTrue(e.getMessage().endsWith("start it first"));
  }

  @Test
  void anUnknownHostIsNamed() {
    IOException e =
        assertThrows(
            IOException.class, () -> IncomingBytesFromTcp.connect("no-such.invalid", 5600, 500));
    assertTrue(e.getMessage().contains("no-such.invalid"), e.getMessage());
  }

  private IncomingBytes served(byte[] bytes, boolean thenEnd) throws IOException {
    server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
    Thread thread = new Thread(() -> serve(bytes, thenEnd), "test-stream-server");
    thread.setDaemon(true);
    thread.start();
    return IncomingBytesFromTcp.connect("127.0.0.1", server.getLocalPort(), 2000);
  }

  @SuppressWarnings("resource")
  private void serve(byte[] bytes, boolean thenEnd) {
    try {
      Socket client = server.accept();
      OutputStream output = client.getOutputStream();
      output.write(bytes);
      output.flush();
      if (thenEnd) {
        client.close();
      } else {
        // Keeps the client's connection until the client goes.
        client.getInputStream().read();
        client.close();
      }
    } catch (IOException e) {
      // The test has ended and closed the server.
      return;
    }
  }
}

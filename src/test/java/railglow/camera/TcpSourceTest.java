package railglow.camera;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import railglow.thermal.CountSamples;
import railglow.time.SystemClock;

class TcpSourceTest extends FrameSourceContract {
  private ServerSocket server;

  @AfterEach
  void stopServing() throws IOException {
    if (server != null) {
      server.close();
    }
  }

  @Override
  FrameSource thatGives(List<CountSamples> images) throws IOException {
    server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
    byte[] bytes = stream(images);
    Thread thread =
        new Thread(
            () -> {
              try (Socket client = server.accept()) {
                client.getOutputStream().write(bytes);
              } catch (IOException e) {
                // The test has closed its end.
                return;
              }
            },
            "test-camera");
    thread.setDaemon(true);
    thread.start();
    return FrameSources.open(
        "tcp://127.0.0.1:" + server.getLocalPort(), cameraWithCounter(), SystemClock.INSTANCE);
  }
}

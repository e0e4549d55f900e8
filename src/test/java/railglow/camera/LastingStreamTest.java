package railglow.camera;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.observed.Frame;
import railglow.observed.FrameMark;
import railglow.time.SystemClock;

/** Real streams that break off in mid-frame and come back: unplugged, and plugged in again. */
class LastingStreamTest {
  private static final int FIRST = 3;
  private static final int PROVING = 3;
  private static final byte[] STREAM =
      FrameSourceContract.stream(FrameSourceContract.images(FIRST + PROVING + 4));
  private static final int FRAME_BYTES = STREAM.length / (FIRST + PROVING + 4);
  @TempDir Path folder;

  @Test
  void aSocketThatBreaksOffInMidFrameIsConnectedAgainAndFramesGoOn() throws Exception {
    try (ServerSocket server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      Thread camera = new Thread(() -> serveTwice(server), "test-camera");
      camera.setDaemon(true);
      camera.start();
      isLostOnceAndGoesOn("tcp://127.0.0.1:" + server.getLocalPort(), "in the middle of a frame");
    }
  }

  @Test
  void aDriverProgramThatDiesInMidFrameIsStartedAgainAndFramesGoOn() throws Exception {
    assumeTrue(Files.isExecutable(Path.of("/bin/sh")), "no /bin/sh here to play the driver");
    Path all = Files.write(folder.resolve("all"), STREAM);
    Path dead = folder.resolve("dead");
    Path script =
        Files.writeString(
            folder.resolve("driver.sh"),
            """
            if [ -e %2$s ]; then
              cat %1$s
              sleep 60
            fi
            touch %2$s
            head -c %3$d %1$s
            echo 'the camera went away' >&2
            exit 7
            """
                .formatted(all, dead, FIRST * FRAME_BYTES + FRAME_BYTES / 2));
    isLostOnceAndGoesOn("exec:/bin/sh " + script, "exit code 7");
  }

  private static void isLostOnceAndGoesOn(String address, String trouble) throws IOException {
    CameraDescriptor camera = FrameSourceContract.cameraWithCounter();
    try (FrameSource source = FrameSources.openLasting(address, camera, SystemClock.INSTANCE)) {
      Frame frame = new Frame(source.newSamples());
      for (int n = 0; n < FIRST; n++) {
        assertEquals(FrameSource.Outcome.FRAME, FrameSourceContract.next(source, frame));
        assertEquals(n, frame.number());
        assertTrue(frame.marks().isEmpty());
      }
      long lastNanos = frame.arrivalNanos();
      assertEquals(FrameSource.Outcome.FRAME, nextAfterLoss(source, frame));
      assertEquals(1, source.losses());
      String said = source.lastTrouble().orElseThrow();
      assertTrue(said.contains(trouble), said);
      assertEquals(Set.of(FrameMark.AFTER_GAP), frame.marks());
      long passed = Math.round((frame.arrivalNanos() - lastNanos) / 40e6);
      assertEquals(FIRST - 1 + passed, frame.number(), 1, "numbers go on by the time that passed");
      long first = frame.number();
      assertEquals(FrameSource.Outcome.FRAME, FrameSourceContract.next(source, frame));
      assertEquals(first + 1, frame.number());
      assertTrue(frame.marks().isEmpty());
    }
  }

  /** A loss and the frames that only prove the stream are read over. */
  private static FrameSource.Outcome nextAfterLoss(FrameSource source, Frame frame)
      throws IOException {
    long deadline = SystemClock.INSTANCE.nanos() + 20_000_000_000L;
    FrameSource.Outcome outcome = source.read(frame, 50_000_000);
    assertNotEquals(FrameSource.Outcome.ENDED, outcome);
    while (outcome != FrameSource.Outcome.FRAME && SystemClock.INSTANCE.nanos() - deadline < 0) {
      outcome = source.read(frame, 50_000_000);
    }
    return outcome;
  }

  private static void serveTwice(ServerSocket server) {
    try {
      try (Socket client = server.accept()) {
        client.getOutputStream().write(STREAM, 0, FIRST * FRAME_BYTES + FRAME_BYTES / 2);
      }
      try (Socket client = server.accept()) {
        client.getOutputStream().write(STREAM);
        client.getInputStream().read();
      }
    } catch (IOException e) {
      // The test has ended and closed its end.
      return;
    }
  }
}

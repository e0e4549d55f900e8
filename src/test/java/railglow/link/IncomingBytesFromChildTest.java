package railglow.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class IncomingBytesFromChildTest extends IncomingBytesContract {
  private static final long SECOND = 1_000_000_000;
  @TempDir Path folder;

  @BeforeEach
  void aShellIsThere() {
    assumeTrue(Files.isExecutable(Path.of("/bin/sh")), "no /bin/sh here to play the camera");
  }

  @Override
  IncomingBytes thatGives(byte[] bytes) throws IOException {
    Path file = folder.resolve("bytes");
    Files.write(file, bytes);
    return IncomingBytesFromChild.start(List.of("cat", file.toString()));
  }

  @Override
  IncomingBytes thatIsSilent() throws IOException {
    return shell("sleep 60");
  }

  @Test
  void aProgramThatDiesIsNamedWithItsExitCodeAndLastWords() throws IOException {
    try (IncomingBytes stream = shell("printf 'ab'; echo 'no such device' >&2; exit 3")) {
      byte[] got = new byte[8];
      int filled = 0;
      while (filled < 2) {
        filled += stream.read(got, filled, 8 - filled, 5 * SECOND);
      }
      IOException e = assertThrows(IOException.class, () -> stream.read(got, 0, 8, 5 * SECOND));
      assertTrue(e.getMessage().contains("ended with exit code 3"), e.getMessage());
      assertTrue(e.getMessage().endsWith("its last words: no such device"), e.getMessage());
    }
  }

  @Test
  void aFloodOfErrorsDoesNotStopThePicture() throws IOException {
    try (IncomingBytes stream =
        shell("head -c 3000000 /dev/zero | tr '\\0' 'x' >&2; printf 'ok'; exit 1")) {
      byte[] got = new byte[8];
      int count = stream.read(got, 0, 8, 10 * SECOND);
      assertTrue(count > 0);
      IOException e =
          assertThrows(
              IOException.class,
              () -> {
                while (stream.read(got, 0, 8, 5 * SECOND) >= 0) {
                  assertTrue(stream.description().length() > 0);
                }
              });
      assertTrue(e.getMessage().length() < 600, "the message is " + e.getMessage().length());
    }
  }

  @Test
  void aProgramThatIgnoresTheRequestIsEndedByForce() throws IOException {
    IncomingBytesFromChild stream =
        shell("trap '' TERM; printf 'up'; while true; do sleep 0.05; done");
    assertTrue(stream.read(new byte[2], 0, 2, 5 * SECOND) > 0);
    assertTimeoutPreemptively(Duration.ofSeconds(5), stream::close);
    assertFalse(stream.isAlive());
  }

  @Test
  void aProgramNobodyReadsFromCanStillBeClosed() throws IOException {
    IncomingBytesFromChild stream = IncomingBytesFromChild.start(List.of("cat", "/dev/zero"));
    assertTrue(stream.read(new byte[16], 0, 16, 5 * SECOND) > 0);
    assertTimeoutPreemptively(Duration.ofSeconds(5), stream::close);
    assertFalse(stream.isAlive());
  }

  @Test
  void whatItStartedItselfEndsWithIt() throws Exception {
    Path pidFile = folder.resolve("pid");
    IncomingBytesFromChild stream =
        shell("sleep 61 & echo $! > " + pidFile + "; printf 'up'; wait");
    assertTrue(stream.read(new byte[2], 0, 2, 5 * SECOND) > 0);
    long pid = Long.parseLong(Files.readString(pidFile).strip());
    ProcessHandle grandchild = ProcessHandle.of(pid).orElseThrow();
    stream.close();
    assertTimeoutPreemptively(
        Duration.ofSeconds(5), () -> assertEquals(grandchild, grandchild.onExit().get()));
  }

  @Test
  void aProgramThatIsNotInstalledIsOneSentence() {
    IOException e =
        assertThrows(
            IOException.class,
            () -> IncomingBytesFromChild.start(List.of("no-such-camera-program", "-x")));
    assertTrue(e.getMessage().startsWith("can't start 'no-such-camera-program -x'"));
    assertTrue(e.getMessage().endsWith("is the program installed?"));
  }

  @Test
  void theProgramGetsNoInput() throws IOException {
    try (IncomingBytes stream = shell("cat; printf 'end'")) {
      assertTrue(stream.read(new byte[8], 0, 8, 5 * SECOND) > 0);
    }
  }

  private static IncomingBytesFromChild shell(String script) throws IOException {
    return IncomingBytesFromChild.start(List.of("/bin/sh", "-c", script));
  }
}

package railglow.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import railglow.time.SystemClock;

class BlockingPortTest {
  private static final long SECOND = 1_000_000_000L;
  private static final byte[] OFF = "OUTP OFF\n".getBytes(java.nio.charset.StandardCharsets.UTF_8);
  private final Line line = new Line();
  private final BlockingPort port =
      new BlockingPort(
          () -> line, new BytePort.Traits(false, false, false), "line", SystemClock.INSTANCE);

  /** Notes who writes, and answers with one byte when asked to. */
  private static final class Line implements BlockingWay {
    private final List<Thread> writers = Collections.synchronizedList(new ArrayList<>());
    private final CountDownLatch freed = new CountDownLatch(1);
    private volatile boolean atOnce = true;
    private volatile boolean stuck;

    @Override
    public void open() {}

    @Override
    public int available() {
      return 1;
    }

    @Override
    public int read(byte[] into) {
      return 1;
    }

    @Override
    public boolean takesAtOnce() {
      return atOnce;
    }

    @Override
    public void write(byte[] bytes) throws IOException {
      writers.add(Thread.currentThread());
      if (stuck) {
        try {
          freed.await();
        } catch (InterruptedException e) {
          throw new IOException(e);
        }
      }
    }

    @Override
    public boolean writeWithoutMemory(ReadyMessage message) {
      return false;
    }

    @Override
    public void close() {
      freed.countDown();
    }

    Thread lastWriter() {
      return writers.get(writers.size() - 1);
    }
  }

  @BeforeEach
  void open() throws LinkException {
    port.open(SECOND);
  }

  @AfterEach
  void close() {
    line.freed.countDown();
    port.close();
  }

  @Test
  void aMessageThatIsTakenAtOnceWakesNoOtherThread() throws LinkException {
    assertEquals(OFF.length, port.write(OFF, SECOND));

    assertEquals(Thread.currentThread(), line.lastWriter());
  }

  @Test
  void aLineThatMayHoldItUpIsWrittenByItsOwnThread() throws LinkException {
    line.atOnce = false;

    port.write(OFF, 60 * SECOND);

    assertNotEquals(Thread.currentThread(), line.lastWriter());
  }

  @Test
  void aLineThatDoesNotAnswerIsNotTrustedForLong() throws LinkException {
    int written = 0;
    while (written + OFF.length <= 1024) {
      written += port.write(OFF, SECOND);
      assertEquals(Thread.currentThread(), line.lastWriter());
    }

    port.write(OFF, 60 * SECOND);
    assertNotEquals(Thread.currentThread(), line.lastWriter());

    port.read(new byte[1], SECOND);
    port.write(OFF, SECOND);
    assertEquals(Thread.currentThread(), line.lastWriter(), "it has answered");
  }

  @Test
  void nothingIsWrittenPastAMessageThatIsStillHeldUp() throws LinkException {
    line.atOnce = false;
    line.stuck = true;
    assertThrows(LinkTimeoutException.class, () -> port.write(OFF, SECOND / 100));

    line.atOnce = true;
    assertThrows(LinkTimeoutException.class, () -> port.write(OFF, SECOND / 100));

    assertEquals(0, Collections.frequency(line.writers, Thread.currentThread()));
  }
}

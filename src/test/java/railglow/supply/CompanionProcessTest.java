package railglow.supply;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import org.junit.jupiter.api.Test;
import railglow.safety.StopLatch;

class CompanionProcessTest {
  private static final long MILLISECOND = 1_000_000;
  private long now = 7 * MILLISECOND;
  private final PipesOnly pipes = new PipesOnly();
  private final StopLatch latch = new StopLatch();
  private final CompanionProcess companion = new CompanionProcess(pipes, () -> now, latch);

  @Test
  void aCompanionThatComesUpBetweenTwoBeatsIsReadyWithinMilliseconds() {
    long next = companion.step(now);
    assertFalse(companion.isReady());

    pipes.answers = new ByteArrayInputStream(new byte[] {(byte) CompanionTalk.OWN_WAY});
    assertTrue(next - now <= 10 * MILLISECOND, "the next look is " + (next - now) + " ns away");
    now = next;
    companion.step(now);

    assertTrue(companion.isReady());
    assertTrue(companion.hasOwnWay());
  }

  @Test
  void beatsComeNoOftenerWhileItIsAwaitedThanLater() {
    int awaited = beatsOfASecond();

    pipes.answers = new ByteArrayInputStream(new byte[] {(byte) CompanionTalk.WAY_WHEN_FREE});
    int watching = beatsOfASecond();

    assertTrue(companion.isReady());
    assertEquals(watching, awaited, 1);
    assertTrue(watching >= 4, watching + " beats a second");
    assertFalse(latch.isSet());
  }

  private int beatsOfASecond() {
    int before = pipes.beats.size();
    long end = now + 1000 * MILLISECOND;
    while (now < end) {
      now = companion.step(now);
    }
    return pipes.beats.size() - before;
  }

  /** A process of which only its two pipes are used. */
  private static final class PipesOnly extends Process {
    private final ByteArrayOutputStream beats = new ByteArrayOutputStream();
    private InputStream answers = InputStream.nullInputStream();

    @Override
    public OutputStream getOutputStream() {
      return beats;
    }

    @Override
    public InputStream getInputStream() {
      return new InputStream() {
        @Override
        public int read() throws IOException {
          return answers.read();
        }

        @Override
        public int available() throws IOException {
          return answers.available();
        }
      };
    }

    @Override
    public InputStream getErrorStream() {
      return InputStream.nullInputStream();
    }

    @Override
    public int waitFor() {
      return 0;
    }

    @Override
    public int exitValue() {
      return 0;
    }

    @Override
    public void destroy() {}

    @Override
    public boolean isAlive() {
      return true;
    }
  }
}

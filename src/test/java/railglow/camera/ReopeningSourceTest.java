package railglow.camera;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import railglow.observed.Frame;
import railglow.observed.FrameMark;
import railglow.thermal.CountSamples;

class ReopeningSourceTest extends FrameSourceContract {
  private long now;
  private int openings;
  private boolean pluggedIn = true;

  /** The contract's end never comes here: a lost source is waited for. */
  @Override
  FrameSource thatGives(List<CountSamples> images) throws IOException {
    FrameSource lasting =
        ReopeningSource.open(
            () -> RecordedSource.atOnce(new MemoryFrames(images), n -> 40_000_000L * n),
            25,
            () -> 0);
    return new EndingAfter(lasting, images.size());
  }

  @Test
  void aCameraUnpluggedAndPutBackGoesOnWithTheNumbersOfTheTimeThatPassed() throws IOException {
    ReopeningSource source = ReopeningSource.open(this::plugIn, 25, () -> now);
    Frame frame = new Frame(source.newSamples());
    for (int n = 0; n < 3; n++) {
      assertEquals(FrameSource.Outcome.FRAME, source.read(frame, 0));
      assertEquals(n, frame.number());
    }
    pluggedIn = false;
    assertEquals(FrameSource.Outcome.NOTHING_YET, source.read(frame, 0));
    assertEquals(1, source.losses());
    now += 1_000_000_000;
    assertEquals(FrameSource.Outcome.NOTHING_YET, source.read(frame, 0));
    assertEquals("nothing is plugged in", source.lastTrouble().orElseThrow());
    pluggedIn = true;
    assertEquals(FrameSource.Outcome.NOTHING_YET, source.read(frame, 0), "not at once");
    now += 1_000_000_000;
    for (int proving = 0; proving < 3; proving++) {
      assertEquals(FrameSource.Outcome.NOTHING_YET, source.read(frame, 0));
    }
    assertEquals(FrameSource.Outcome.FRAME, source.read(frame, 0));
    // Frame 2 came at 80 ms, this one at 2120 ms: 51 periods later.
    assertEquals(53, frame.number());
    assertEquals(Set.of(FrameMark.AFTER_GAP), frame.marks());
    assertEquals(FrameSource.Outcome.FRAME, source.read(frame, 0));
    assertEquals(54, frame.number());
    assertTrue(frame.marks().isEmpty());
    source.close();
  }

  @Test
  void aSourceThatCantBeOpenedAtAllIsAnError() {
    pluggedIn = false;
    IOException e =
        assertThrows(IOException.class, () -> ReopeningSource.open(this::plugIn, 25, () -> now));
    assertEquals("nothing is plugged in", e.getMessage());
  }

  private FrameSource plugIn() throws IOException {
    if (!pluggedIn) {
      throw new IOException("nothing is plugged in");
    }
    openings++;
    long start = now;
    return RecordedSource.atOnce(
        new MemoryFrames(images(openings == 1 ? 3 : 6)), n -> start + 40_000_000L * n);
  }

  /** Ends where the wrapped source would wait for ever. */
  private record EndingAfter(FrameSource inner, int frames, int[] seen) implements FrameSource {
    EndingAfter(FrameSource inner, int frames) {
      this(inner, frames, new int[1]);
    }

    @Override
    public String description() {
      return inner.description();
    }

    @Override
    public railglow.thermal.Samples newSamples() {
      return inner.newSamples();
    }

    @Override
    public Outcome read(Frame frame, long timeoutNanos) throws IOException {
      return seen[0]++ < frames ? inner.read(frame, timeoutNanos) : Outcome.ENDED;
    }

    @Override
    public void close() {
      inner.close();
    }
  }
}

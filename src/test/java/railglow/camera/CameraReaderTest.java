package railglow.camera;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import org.junit.jupiter.api.Test;
import railglow.observed.Frame;
import railglow.thermal.CountSamples;
import railglow.thermal.Samples;
import railglow.time.Step;

class CameraReaderTest {
  private int wakes;

  @Test
  void framesReachTheQueueInOrderAndWakeTheConsumer() {
    ScriptedSource source = new ScriptedSource(0, 1, 2);
    CameraReader reader = reader(source, 4, 4);
    for (int i = 0; i < 3; i++) {
      assertEquals(100 + i, reader.step(100 + i));
    }
    assertEquals(3, reader.framesArrived());
    assertEquals(3, wakes);
    for (int n = 0; n < 3; n++) {
      assertEquals(n, queue.poll().number());
    }
    assertNull(queue.poll());
    assertEquals(Step.FINISHED, reader.step(200));
    assertTrue(reader.hasEnded());
    assertTrue(reader.failure().isEmpty());
  }

  @Test
  void aConsumerThatStallsCostsFramesButNeverStopsTheReader() {
    ScriptedSource source = new ScriptedSource(0, 1, 2, 3, 4, 5);
    CameraReader reader = reader(source, 8, 2);
    for (int i = 0; i < 6; i++) {
      reader.step(i);
    }
    assertEquals(6, reader.framesArrived());
    assertEquals(4, reader.framesDropped());
    assertEquals(5 * 10, reader.lastArrivalNanos());
    assertEquals(0, queue.poll().number());
    assertEquals(1, queue.poll().number());
  }

  @Test
  void anEmptyPoolCostsFramesUntilOneIsGivenBack() {
    ScriptedSource source = new ScriptedSource(0, 1, 2, 3);
    CameraReader reader = reader(source, 1, 8);
    reader.step(0);
    reader.step(1);
    assertEquals(1, reader.framesDropped());
    pool.giveBack(queue.poll());
    reader.step(2);
    assertEquals(1, reader.framesDropped());
    assertEquals(2, queue.poll().number());
  }

  @Test
  void gapsInTheNumbersAreCountedAsMissing() {
    ScriptedSource source = new ScriptedSource(0, 1, 5, 5, 6);
    CameraReader reader = reader(source, 8, 8);
    for (int i = 0; i < 5; i++) {
      reader.step(i);
    }
    assertEquals(3, reader.framesMissing());
  }

  @Test
  void beforeTheFirstFrameTheAgeCountsFromTheStart() {
    CameraReader reader = reader(new ScriptedSource(-1), 2, 2);
    assertEquals(Long.MIN_VALUE, reader.lastArrivalNanos());
    assertTrue(reader.step(700) > 700, "a source that gave nothing is asked again later");
    assertEquals(700, reader.lastArrivalNanos());
  }

  @Test
  void aBrokenSourceEndsTheLoopWithItsSentence() {
    CameraReader reader = reader(new ScriptedSource(0, -2), 2, 2);
    reader.step(0);
    assertEquals(Step.FINISHED, reader.step(1));
    assertEquals("the cable is out", reader.failure().orElseThrow());
  }

  @Test
  void aFrameGivenBackTwiceIsAMistakeOfOurs() {
    FramePool frames = new FramePool(1, () -> new CountSamples(1, 1));
    Frame frame = frames.take();
    assertNull(frames.take());
    frames.giveBack(frame);
    assertThrows(IllegalStateException.class, () -> frames.giveBack(frame));
    assertSame(frame, frames.take());
  }

  private FramePool pool;
  private FrameQueue queue;

  private CameraReader reader(FrameSource source, int frames, int places) {
    pool = new FramePool(frames, source::newSamples);
    queue = new FrameQueue(places, () -> wakes++);
    return new CameraReader(source, pool, queue);
  }

  /** Gives frames of these numbers; -1 is nothing yet, -2 a broken cable. */
  private static final class ScriptedSource implements FrameSource {
    private final Deque<Integer> script = new ArrayDeque<>();

    ScriptedSource(Integer... numbers) {
      script.addAll(List.of(numbers));
    }

    @Override
    public String description() {
      return "a script";
    }

    @Override
    public Samples newSamples() {
      return new CountSamples(1, 1);
    }

    @Override
    public Outcome read(Frame frame, long timeoutNanos) throws IOException {
      if (script.isEmpty()) {
        return Outcome.ENDED;
      }
      int number = script.remove();
      if (number == -1) {
        return Outcome.NOTHING_YET;
      }
      if (number == -2) {
        throw new IOException("the cable is out");
      }
      frame.begin(number, number * 10L);
      return Outcome.FRAME;
    }

    @Override
    public void close() {
      script.clear();
    }
  }
}

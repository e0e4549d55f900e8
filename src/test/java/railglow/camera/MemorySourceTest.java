package railglow.camera;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import railglow.observed.Frame;
import railglow.thermal.CountSamples;

class MemorySourceTest extends FrameSourceContract {
  @Override
  FrameSource thatGives(List<CountSamples> images) {
    return RecordedSource.atOnce(new MemoryFrames(images), index -> 40_000_000L * index);
  }

  @Test
  void aPacedSourceGivesAFrameOnlyWhenItIsDue() throws IOException {
    long[] now = {500};
    FrameSource source = RecordedSource.paced(new MemoryFrames(images(2)), 25, () -> now[0]);
    Frame frame = new Frame(source.newSamples());
    assertEquals(FrameSource.Outcome.FRAME, source.read(frame, 0));
    assertEquals(FrameSource.Outcome.NOTHING_YET, source.read(frame, 0));
    now[0] += 40_000_000;
    assertEquals(FrameSource.Outcome.FRAME, source.read(frame, 0));
    assertEquals(40_000_500, frame.arrivalNanos());
  }

  @Test
  void noFramesAreNoRecording() {
    assertThrows(IllegalArgumentException.class, () -> new MemoryFrames(List.of()));
  }
}

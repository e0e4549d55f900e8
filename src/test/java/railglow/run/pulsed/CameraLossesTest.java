package railglow.run.pulsed;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import railglow.camera.CameraReader;
import railglow.camera.FramePool;
import railglow.camera.FrameQueue;
import railglow.camera.FrameSource;
import railglow.camera.MemoryFrames;
import railglow.camera.RecordedSource;
import railglow.camera.ReopeningSource;
import railglow.thermal.CountSamples;

class CameraLossesTest {
  private static final long SECOND = 1_000_000_000L;
  private final List<String> told = new ArrayList<>();
  private long now;
  private int frames = 1;
  private boolean pluggedIn = true;

  @Test
  void eachLossAndEachReturnIsToldOnceAndCounted() throws IOException {
    FrameSource source = ReopeningSource.open(this::plugIn, 25, () -> now);
    FrameQueue queue = new FrameQueue(20, () -> {});
    CameraReader reader = new CameraReader(source, new FramePool(20, source::newSamples), queue);
    CameraLosses losses = new CameraLosses(source, reader, told::add);
    pluggedIn = false;
    reader.step(now);
    losses.check();
    assertEquals("", losses.trouble());
    reader.step(now);
    losses.check();
    losses.check();
    assertEquals(
        List.of("The camera was lost (once): it ended; it is tried again every half second"), told);
    now += SECOND;
    reader.step(now);
    losses.check();
    assertEquals("the camera was lost: nothing is plugged in", losses.trouble());
    pluggedIn = true;
    frames = 4;
    now += SECOND;
    for (int proving = 0; proving < 3; proving++) {
      reader.step(now);
      losses.check();
      assertEquals("the camera was lost: nothing is plugged in", losses.trouble());
    }
    reader.step(now);
    losses.check();
    assertEquals("", losses.trouble());
    assertEquals(
        List.of("The camera gives frames again; those in between are missing"),
        told.subList(1, told.size()));
    reader.step(now);
    losses.check();
    assertEquals(
        "The camera was lost (2 times): it ended; it is tried again every half second",
        told.get(2));
    reader.close();
  }

  private FrameSource plugIn() throws IOException {
    if (!pluggedIn) {
      throw new IOException("nothing is plugged in");
    }
    long start = now;
    return RecordedSource.atOnce(
        new MemoryFrames(Collections.nCopies(frames, new CountSamples(4, 4))),
        n -> start + 40_000_000L * n);
  }
}

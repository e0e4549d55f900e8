package railglow.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import railglow.camera.CameraProfile;
import railglow.camera.FrameQueue;
import railglow.camera.HottestPixel;
import railglow.journal.CameraFacts;
import railglow.journal.JournalWriter;
import railglow.journal.RunFolder;
import railglow.journal.RunHeader;
import railglow.journal.SampleRun;
import railglow.observed.Frame;
import railglow.run.reduction.DeafListener;
import railglow.run.reduction.Reduction;
import railglow.safety.StopLatch;
import railglow.thermal.CountSamples;
import railglow.time.StepRunner;
import railglow.time.SystemClock;

@Timeout(value = 60, unit = TimeUnit.SECONDS)
class CruncherTest {
  private static final long MINUTE = 60_000_000_000L;
  private static final int FRAMES = 5;
  private final RunHeader header = SampleRun.header();
  private final CountDownLatch inStep = new CountDownLatch(1);
  private final CountDownLatch released = new CountDownLatch(1);
  private final FrameQueue frames = new FrameQueue(FRAMES, () -> {});

  /** Its thread is in the midst of a step, as in a long look, until it is released. */
  private Cruncher busy(Path folder) throws IOException {
    RunWatcher holding =
        new RunWatcher() {
          @Override
          public void onProgress(RunProgress progress) {}

          @Override
          public void onMessage(String sentence) {}

          @Override
          public void onFrame(Frame frame) {
            inStep.countDown();
            await(released);
          }
        };
    CameraFacts camera = header.camera();
    CountSamples like = new CountSamples(camera.width(), camera.height());
    for (int k = 0; k < FRAMES; k++) {
      Frame frame = new Frame(new CountSamples(camera.width(), camera.height()));
      frame.begin(k, SampleRun.START + k * 40_000_000L);
      frames.offer(frame);
    }
    JournalWriter journal = JournalWriter.create(new RunFolder(folder.resolve("run")), header, 0);
    return new Cruncher(
        frames,
        new SupplyEvents(holding),
        new Reduction(header, like, new DeafListener()),
        new HottestPixel(
            new CameraProfile(
                "camera", camera.width(), camera.height(), 25, 0.01, -273.15, 0.05, 0.03, 0.01)),
        Scribe.withoutFrames(journal, new StopLatch(), 1000, SampleRun.START),
        holding,
        Long.MAX_VALUE,
        SampleRun.START);
  }

  @Test
  void aReductionInProgressIsNotTouchedByAnotherThread(@TempDir Path folder) throws Exception {
    Cruncher cruncher = busy(folder);
    StepRunner runner = runner(cruncher).start();
    inStep.await();

    assertNull(cruncher.finish(runner, 1_000_000));

    assertEquals(FRAMES - 1, frames.waitingCount());
    assertTrue(runner.isRunning());
    released.countDown();
  }

  @Test
  void aLookInProgressIsWaitedForBeforeTheEndIsMade(@TempDir Path folder) throws Exception {
    Cruncher cruncher = busy(folder);
    StepRunner runner = runner(cruncher).start();
    inStep.await();
    released.countDown();

    assertNotNull(cruncher.finish(runner, MINUTE));

    assertEquals(0, frames.waitingCount());
  }

  private static StepRunner runner(Cruncher cruncher) {
    return new StepRunner("cruncher", cruncher, SystemClock.INSTANCE, (name, e) -> {});
  }

  private static void await(CountDownLatch latch) {
    try {
      latch.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}

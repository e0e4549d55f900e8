package railglow.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import railglow.journal.Entry;
import railglow.journal.FrameStoreWriter;
import railglow.journal.JournalReader;
import railglow.journal.JournalWriter;
import railglow.journal.RunFolder;
import railglow.journal.SampleRun;
import railglow.journal.SampleType;
import railglow.observed.Frame;
import railglow.observed.OutputState;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.thermal.CountSamples;
import railglow.time.StepRunner;
import railglow.time.SystemClock;

@Timeout(value = 60, unit = TimeUnit.SECONDS)
class ScribeTest {
  private static final long MINUTE = 60_000_000_000L;
  private static final Entry.Closed CLOSED =
      new Entry.Closed(
          SampleRun.START, StopCause.OPERATOR_REQUEST, OutputState.PROVEN_OFF, 0, 1, 0, 0);
  private final CountDownLatch inStep = new CountDownLatch(1);
  private final CountDownLatch released = new CountDownLatch(1);
  private RunFolder folder;
  private Scribe scribe;
  private StepRunner runner;

  /** Its thread is in the midst of a step, as with a disk that does not answer. */
  @BeforeEach
  void aBusyScribe(@TempDir Path temporary) throws Exception {
    folder = new RunFolder(temporary.resolve("run"));
    JournalWriter journal = JournalWriter.create(folder, SampleRun.header(), 0);
    CountSamples like = new CountSamples(32, 24);
    FrameStoreWriter store =
        FrameStoreWriter.create(folder.frames(), SampleType.of(like), like.width(), like.height());
    scribe = new Scribe(journal, store, new StopLatch(), this::hold, 10, 10, SampleRun.START);
    scribe.store(new Frame(like));
    runner = new StepRunner("scribe", scribe, SystemClock.INSTANCE, (name, e) -> {}).start();
    inStep.await();
  }

  private void hold(Frame frame) {
    inStep.countDown();
    try {
      released.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private List<Entry> written() throws IOException {
    return JournalReader.read(folder).entries();
  }

  @Test
  void aRecordThatIsBeingWrittenIsNotClosedByAnotherThread() throws Exception {
    scribe.close(runner, 1_000_000, CLOSED, SampleRun.START);

    assertTrue(scribe.failure().contains("the disk did not take it"), scribe.failure());
    assertFalse(written().contains(CLOSED));
    released.countDown();
  }

  @Test
  void aStepInProgressIsWaitedForBeforeTheRecordIsClosed() throws Exception {
    released.countDown();

    scribe.close(runner, MINUTE, CLOSED, SampleRun.START);

    assertNull(scribe.failure());
    assertEquals(CLOSED, written().get(written().size() - 1));
  }
}

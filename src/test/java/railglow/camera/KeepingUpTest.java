package railglow.camera;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.abort;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * 640 x 512 at 60 Hz from another process, in real time. {@code -Drailglow.keepup.seconds=600} for
 * ten minutes. Frames that never came, though the reader was there all the time, are their sender's
 * loss. Where others take much of the machine a loss of ours is told but can't be judged: then the
 * test is left out, and says so, unless the program itself needs too much.
 */
class KeepingUpTest {
  private static final double PERIOD_MILLIS = 1000.0 / LargeCamera.RATE;

  /** Of all processors; more than this in others' hands, and time is no measure of us. */
  private static final double BUSY_SHARE = 0.2;

  /** What the camera's side of a socket holds: so long may nobody read. */
  private static final double PATIENCE_MILLIS = 250;

  private static final long HEAP_GROWTH_BYTES = 2_000_000;
  private static final long RESIDENT_GROWTH_BYTES = 16_000_000;

  /** A look in every build: what each frame goes through, in short. */
  @Test
  void noFrameIsLostByUsInAFewSeconds() throws IOException {
    try (LargeCamera camera = LargeCamera.start()) {
      judge("3 s", KeptUp.watch(camera.address(), LargeCamera.counted(), 3));
    }
  }

  @Test
  @Tag("slow")
  void noFrameIsLostByUsAndTheMemoryStaysFlat() throws IOException {
    int seconds = Integer.getInteger("railglow.keepup.seconds", 20);
    KeptUp still;
    try (LargeCamera camera = LargeCamera.start()) {
      still = KeptUp.watch(camera.address(), LargeCamera.counted(), seconds);
    }
    Tables table =
        new Tables(
            "keeping-up",
            "stream",
            "seconds",
            "frames used",
            "lost by us",
            "never came",
            "most waiting",
            "reader away, longest",
            "processor time per frame",
            "of the machine taken by others");
    row(table, "simulated board, still", still);
    KeptUp moving =
        Files.isExecutable(Path.of("/usr/bin/ffmpeg"))
            ? moving(Integer.getInteger("railglow.keepup.moving.seconds", seconds))
            : null;
    if (moving != null) {
      row(table, "ffmpeg's test picture, moving", moving);
    }
    table.write();
    memoryTable(still).write();
    judge("still", still);
    judgeMemory(still);
    assumeTrue(moving != null, "no ffmpeg here: the moving picture is left out");
    judge("moving", moving);
    judgeMemory(moving);
  }

  /** Searched for from afar again and again, until it is lost after two seconds. */
  private static KeptUp moving(int seconds) throws IOException {
    String command =
        "exec:ffmpeg -nostdin -loglevel error -re -f lavfi -i testsrc=size=640x512:rate=60"
            + " -frames:v "
            + LargeCamera.RATE * (seconds + 1)
            + " -f rawvideo -pix_fmt gray16le -";
    return KeptUp.watch(command, LargeCamera.bare(), seconds);
  }

  private static void row(Tables table, String stream, KeptUp seen) {
    table.row(
        "%s | %d | %d | %d | %d | %d | %.1f ms | %.1f of %.1f ms | %s",
        stream,
        seen.seconds(),
        seen.used(),
        seen.droppedByUs(),
        seen.missing(),
        seen.mostWaiting(),
        seen.longestAwayMillis(),
        seen.processorMillisPerFrame(),
        PERIOD_MILLIS,
        MachineShare.percent(seen.othersShare()));
  }

  private static Tables memoryTable(KeptUp seen) {
    Tables memory =
        new Tables("keeping-up-memory", "after", "heap in use after a collection", "whole process");
    int looks = seen.heapBytes().size();
    for (int i = 0; i < looks; i++) {
      memory.row(
          "%d s | %.1f MB | %s",
          (i + 1) * seen.seconds() / looks,
          seen.heapBytes().get(i) / 1e6,
          seen.residentBytes().isEmpty()
              ? "not told here"
              : String.format(Locale.ROOT, "%.0f MB", seen.residentBytes().get(i) / 1e6));
    }
    return memory;
  }

  private static void judge(String what, KeptUp seen) {
    String facts =
        String.format(
            Locale.ROOT,
            "%s: %d of %d frames used, %d lost by us, %d never came, at most %d waited, the reader"
                + " was away for %.1f ms at most, %.1f ms of processor time for each frame of %.1f"
                + " ms, others had %s of the machine",
            what,
            seen.used(),
            (long) LargeCamera.RATE * seen.seconds(),
            seen.droppedByUs(),
            seen.missing(),
            seen.mostWaiting(),
            seen.longestAwayMillis(),
            seen.processorMillisPerFrame(),
            PERIOD_MILLIS,
            MachineShare.percent(seen.othersShare()));
    System.out.println(facts);
    assertTrue(seen.used() > 0, facts);
    assertTrue(seen.processorMillisPerFrame() < PERIOD_MILLIS, "too dear: " + facts);
    long wanted = (long) LargeCamera.RATE * seen.seconds();
    boolean kept =
        seen.droppedByUs() == 0
            && seen.used() == wanted
            && seen.longestAwayMillis() < PATIENCE_MILLIS;
    if (!kept && seen.othersShare() > BUSY_SHARE) {
      abort("the machine is too busy to tell our losses from others' work; " + facts);
    }
    assertTrue(kept, facts);
  }

  /** Memory does not depend on who else works; the first looks see code being compiled. */
  private static void judgeMemory(KeptUp seen) {
    assertGrowth("heap in use", seen.heapBytes(), HEAP_GROWTH_BYTES);
    if (!seen.residentBytes().isEmpty()) {
      assertGrowth("process", seen.residentBytes(), RESIDENT_GROWTH_BYTES);
    }
  }

  private static void assertGrowth(String what, List<Long> bytes, long mostBytes) {
    long early = bytes.get(bytes.size() / 3);
    long last = bytes.get(bytes.size() - 1);
    assertTrue(last - early < mostBytes, "the " + what + " grew: " + bytes);
  }
}

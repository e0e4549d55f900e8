package railglow.run.reduction;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.process.ChildJava;

/**
 * What a hunt holds at 640 x 512 leaves a quarter of a heap of 256 MiB to frames on their way and
 * to the report. The whole program is watched by {@code src/bench/hunt-processor.py}.
 */
@Tag("slow")
class LargePictureHeapTest {
  private static final int CYCLES = 12;

  @Test
  void aDozenCyclesOfALargePictureLiveInThreeQuartersOfTheSmallHeap(@TempDir Path folder)
      throws IOException, InterruptedException {
    Process run =
        ChildJava.of(List.of("-XX:+UseSerialGC", "-Xmx192m"), LargeRun.class, folder.toString())
            .redirectErrorStream(true)
            .start();
    String said = new String(run.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(0, run.waitFor(), said);
    assertEquals(CYCLES + " cycles used", said.strip());
  }

  /** All frames of the run as fast as they can, with a look after every cycle. */
  static final class LargeRun {
    private LargeRun() {}

    public static void main(String[] args) throws IOException {
      // A lead-in of 2 s, cycles of 2 s, and a rest.
      long frames = Math.round((2 * CYCLES + 4) * FramePath.FRAMES_PER_SECOND);
      try (FramePath path = new FramePath(640, 512, Path.of(args[0]), CYCLES)) {
        for (long k = 0; k < frames; k++) {
          path.next();
        }
        System.out.println(path.finish().cyclesUsed() + " cycles used");
      }
    }
  }
}

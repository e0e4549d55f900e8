package railglow.live;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.management.ManagementFactory;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import railglow.observed.Frame;
import railglow.observed.OutputState;
import railglow.thermal.CountSamples;
import railglow.thermal.Look;
import railglow.thermal.Plane;

/** What the page costs the run that it shows, in processor time of one core. */
@Tag("slow")
class LivePageCostTest {
  private static final int WIDTH = 640;
  private static final int HEIGHT = 512;
  private static final int SECONDS = 60;

  @Test
  void tenUpdatesASecondAtFullSizeTakeLessThanATwentiethOfACore() {
    second(0, SECONDS);
    long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    second(SECONDS, SECONDS);
    double cpu = (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - before) * 1e-9;
    assertTrue(cpu < 0.05 * SECONDS, cpu / SECONDS + " of a core");
  }

  /** Copies, both pictures and the state as text, ten times for each second. */
  private static void second(int from, int seconds) {
    LivePictures pictures = new LivePictures(PretendedRun.facts());
    LiveRecord record = new LiveRecord(0);
    Frame frame = new Frame(new CountSamples(WIDTH, HEIGHT));
    Plane plane = new Plane(WIDTH, HEIGHT);
    Look look =
        new Look(3, List.of(), PretendedRun.source(0.2), 0.01, plane, plane, plane, tau -> null);
    for (int i = 0; i < 10 * seconds; i++) {
      double now = from + i * 0.1;
      frame.begin(i, Math.round(now * 1e9));
      pictures.onFrame(frame);
      pictures.onLook(look);
      int bytes = pictures.now().length + pictures.difference().length;
      record.onProgress(PretendedRun.progress(now, OutputState.ON, PretendedRun.source(0.2)));
      int told = record.since(i).size();
      assertTrue(bytes > 2 * WIDTH * HEIGHT && told > 5);
    }
  }
}

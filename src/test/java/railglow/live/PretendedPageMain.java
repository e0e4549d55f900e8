package railglow.live;

import railglow.observed.OutputState;
import railglow.time.Pause;

/**
 * A page of a made-up run in a process of its own: prints its address, then who asks for a stop.
 */
final class PretendedPageMain {
  private static final long NEWS_NANOS = 100_000_000L;

  private PretendedPageMain() {}

  public static void main(String[] arguments) throws Exception {
    LivePage page = PretendedRun.page(System.out::println);
    System.out.println(page.address());
    page.onStage(LiveStage.MEASURING, "", "");
    for (int i = 0; true; i++) {
      page.onProgress(PretendedRun.progress(i * 0.1, OutputState.ON, null));
      Pause.nanos(NEWS_NANOS);
    }
  }
}

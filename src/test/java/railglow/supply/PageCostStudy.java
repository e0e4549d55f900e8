package railglow.supply;

import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import railglow.live.Browser;
import railglow.live.LivePage;
import railglow.time.MonotonicClock;
import railglow.time.Pause;
import railglow.time.StepRunner;
import railglow.time.SystemClock;

/**
 * Measures what the live page costs the run beside it, and how often it is drawn, with nobody, one
 * and three viewers. See {@code docs/live-page.md} for the command.
 */
public final class PageCostStudy {
  private static final MonotonicClock CLOCK = SystemClock.INSTANCE;
  private static final long SECOND = 1_000_000_000L;

  private PageCostStudy() {}

  /**
   * @param args seconds for each row, the document to write the table into
   */
  public static void main(String[] args) throws Exception {
    List<String> rows = rate(Integer.parseInt(args[0]));
    rows.forEach(System.out::println);
    if (args.length > 1) {
      System.setProperty("fault.table", args[1]);
      FaultTable.write("page cost", rows);
    }
    System.exit(0);
  }

  private static List<String> rate(int seconds) throws Exception {
    Path profile = Files.createTempDirectory("page-study");
    List<String> rows = new ArrayList<>();
    try (LivePage page = PageStudy.page(who -> {});
        Browser browser = new Browser(profile)) {
      PageLoad load = new PageLoad(CLOCK.nanos(), page);
      try (StepRunner runner = LoudRunner.of("cruncher", load)) {
        runner.start();
        Pause.nanos(10 * SECOND);
        rows.add(cost("nobody looks", load, seconds, browser));
        browser.size(1400, 1000);
        browser.open(page.address());
        PageStudy.await("pictures", () -> !drawn(browser).isEmpty());
        Pause.nanos(3 * SECOND);
        rows.add(cost("one viewer", load, seconds, browser));
        browser.openBeside(page.address());
        browser.openBeside(page.address());
        Pause.nanos(5 * SECOND);
        rows.add(cost("three viewers", load, seconds, browser));
      }
    }
    return rows;
  }

  private static String drawn(Browser browser) throws Exception {
    String text = browser.viewValue("document.body.dataset.drawn || ''");
    return text.isEmpty() ? "" : text;
  }

  private static String cost(String what, PageLoad load, int seconds, Browser browser)
      throws Exception {
    load.takeLateMillis();
    long from = CLOCK.nanos();
    long cpuFrom = load.cpuNanos();
    long allFrom = processCpuNanos();
    String drawnFrom = drawn(browser);
    Pause.nanos(seconds * SECOND);
    double took = (CLOCK.nanos() - from) * 1e-9;
    double[] late = load.takeLateMillis().stream().mapToDouble(x -> x).sorted().toArray();
    String pictures =
        drawnFrom.isEmpty()
            ? "-"
            : String.format(
                Locale.ROOT,
                "%.1f",
                (Long.parseLong(drawn(browser)) - Long.parseLong(drawnFrom)) / took);
    return String.format(
        Locale.ROOT,
        "| %s | %.1f | %s | %.1f %% | %.1f %% | %.2f | %.2f |",
        what,
        late.length / took,
        pictures,
        100 * (load.cpuNanos() - cpuFrom) * 1e-9 / took,
        100 * (processCpuNanos() - allFrom) * 1e-9 / took,
        NearestRank.at(late, 0.5),
        NearestRank.at(late, 0.99));
  }

  private static long processCpuNanos() {
    return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
        .getProcessCpuTime();
  }
}

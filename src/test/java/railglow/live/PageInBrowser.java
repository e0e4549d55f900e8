package railglow.live;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import railglow.observed.OutputState;

/** A made-up run on a page in a real browser, and what tests of it need. */
@Timeout(60)
abstract class PageInBrowser {
  private static final Path PICTURES = Path.of("target", "live-page");
  static Browser browser;
  @TempDir private static Path profile;
  final List<String> stops = new CopyOnWriteArrayList<>();
  final AtomicInteger tenths = new AtomicInteger();
  ScheduledExecutorService run;
  LivePage page;

  @BeforeAll
  static void openBrowser() throws Exception {
    assumeTrue(Browser.isInstalled(), "no Chromium at /usr/bin/chromium");
    browser = new Browser(profile);
    Files.createDirectories(PICTURES);
  }

  @AfterAll
  static void closeBrowser() {
    if (browser != null) {
      browser.close();
    }
  }

  @BeforeEach
  void startRun() throws Exception {
    page = PretendedRun.page(stops::add);
    run = Executors.newSingleThreadScheduledExecutor();
    run.scheduleAtFixedRate(this::tick, 0, 100, TimeUnit.MILLISECONDS);
    browser.size(1400, 1100);
    browser.scheme("light");
    browser.open(page.address());
  }

  private void tick() {
    int now = tenths.incrementAndGet();
    page.onFrame(PretendedRun.frame(now * 3L, 29600, 29800));
    OutputState output =
        stops.isEmpty() && now / 10 % 2 == 0 ? OutputState.ON : OutputState.PROVEN_OFF;
    page.onProgress(PretendedRun.progress(now * 0.1, output, PretendedRun.source(0.2)));
  }

  @AfterEach
  void endRun() throws Exception {
    if (page != null) {
      run.shutdownNow();
      page.close();
      browser.open("about:blank");
    }
  }

  static void await(String what, Check check) throws Exception {
    long deadline = System.nanoTime() + 15_000_000_000L;
    while (!check.holds()) {
      assertTrue(System.nanoTime() < deadline, "waited in vain for " + what);
      TimeUnit.MILLISECONDS.sleep(25);
    }
  }

  /** Something that is waited for. */
  interface Check {
    boolean holds() throws Exception;
  }

  static BufferedImage picture(String name) throws Exception {
    byte[] png = browser.screenshot();
    Files.write(PICTURES.resolve(name + ".png"), png);
    return ImageIO.read(new ByteArrayInputStream(png));
  }

  /** A place of an element in a screenshot, by a share of its size. */
  static int[] place(String id, double right, double down) throws Exception {
    String box = "document.getElementById('" + id + "').getBoundingClientRect()";
    return new int[] {
      (int) number(browser.value(box + ".x + " + right + " * " + box + ".width")),
      (int) number(browser.value(box + ".y + " + down + " * " + box + ".height"))
    };
  }

  /** The same for an element of the frame of pictures and readings. */
  static int[] viewPlace(String id, double right, double down) throws Exception {
    String box = "document.getElementById('" + id + "').getBoundingClientRect()";
    int[] frame = place("view", 0, 0);
    return new int[] {
      frame[0] + (int) number(browser.viewValue(box + ".x + " + right + " * " + box + ".width")),
      frame[1] + (int) number(browser.viewValue(box + ".y + " + down + " * " + box + ".height"))
    };
  }

  static double number(String text) {
    return Double.parseDouble(text);
  }

  static int colourAt(BufferedImage image, String id, double right, double down) throws Exception {
    int[] at = viewPlace(id, right, down);
    return image.getRGB(at[0], at[1]) & 0xFFFFFF;
  }

  static int brightness(int rgb) {
    return (rgb >> 16) + (rgb >> 8 & 0xFF) + (rgb & 0xFF);
  }
}

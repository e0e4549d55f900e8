package railglow.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
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
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import railglow.observed.OutputState;
import railglow.run.RunEnding;
import railglow.safety.Stop;
import railglow.safety.StopCause;

/** The page as a real browser shows it. */
@Timeout(60)
class LivePageInBrowserTest {
  private static final Path PICTURES = Path.of("target", "live-page");
  private static Browser browser;
  @TempDir private static Path profile;
  private final List<String> stops = new CopyOnWriteArrayList<>();
  private final AtomicInteger tenths = new AtomicInteger();
  private ScheduledExecutorService run;
  private LivePage page;

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

  private static void await(String what, Check check) throws Exception {
    long deadline = System.nanoTime() + 15_000_000_000L;
    while (!check.holds()) {
      assertTrue(System.nanoTime() < deadline, "waited in vain for " + what);
      TimeUnit.MILLISECONDS.sleep(25);
    }
  }

  private interface Check {
    boolean holds() throws Exception;
  }

  private static BufferedImage picture(String name) throws Exception {
    byte[] png = browser.screenshot();
    Files.write(PICTURES.resolve(name + ".png"), png);
    return ImageIO.read(new ByteArrayInputStream(png));
  }

  /** A place of an element in a screenshot, by a share of its size. */
  private static int[] place(String id, double right, double down) throws Exception {
    String box = "document.getElementById('" + id + "').getBoundingClientRect()";
    return new int[] {
      (int) number(browser.value(box + ".x + " + right + " * " + box + ".width")),
      (int) number(browser.value(box + ".y + " + down + " * " + box + ".height"))
    };
  }

  /** The same for an element of the frame of pictures and readings. */
  private static int[] viewPlace(String id, double right, double down) throws Exception {
    String box = "document.getElementById('" + id + "').getBoundingClientRect()";
    int[] frame = place("view", 0, 0);
    return new int[] {
      frame[0] + (int) number(browser.viewValue(box + ".x + " + right + " * " + box + ".width")),
      frame[1] + (int) number(browser.viewValue(box + ".y + " + down + " * " + box + ".height"))
    };
  }

  private static double number(String text) {
    return Double.parseDouble(text);
  }

  private static int colourAt(BufferedImage image, String id, double right, double down)
      throws Exception {
    int[] at = viewPlace(id, right, down);
    return image.getRGB(at[0], at[1]) & 0xFFFFFF;
  }

  private static int brightness(int rgb) {
    return (rgb >> 16) + (rgb >> 8 & 0xFF) + (rgb & 0xFF);
  }

  @Test
  void theStateReadsInWordsAndTheNumbersMove() throws Exception {
    await("ON", () -> browser.words("state-words").equals("OUTPUT ON"));
    await("volts", () -> browser.viewWords("volts").equals("1.000"));
    assertEquals("0.145", browser.viewWords("watts"));
    await("OFF", () -> browser.words("state-words").equals("OFF, proven"));
    assertTrue(
        browser.viewWords("limits").contains("of 0.5 A (sequence)"), browser.viewWords("limits"));
    assertTrue(
        browser.viewWords("verdict").contains("Not yet certain"), browser.viewWords("verdict"));
  }

  @Test
  void picturesAreDrawnAndMarked() throws Exception {
    await("a frame", () -> browser.viewWords("now-scale").contains("°C"));
    page.onLook(PretendedRun.look(6, List.of(PretendedRun.source(0.01))));
    await("the difference", () -> browser.viewWords("difference-scale").contains("±200 mK"));
    await("the verdict", () -> browser.viewWords("verdict").contains("Found"));
    assertTrue(browser.viewWords("verdict").contains("420 mK at column 164, row 114"));
    TimeUnit.MILLISECONDS.sleep(300);
    BufferedImage image = picture("wide-light");
    int spot = brightness(colourAt(image, "difference", 164.5 / 256, 114.5 / 192));
    int corner = brightness(colourAt(image, "difference", 0.1, 0.1));
    assertTrue(spot > corner + 150, spot + " at the spot, " + corner + " elsewhere");
    int left = brightness(colourAt(image, "now", 0.03, 0.9));
    int right = brightness(colourAt(image, "now", 0.97, 0.9));
    assertTrue(right > left + 200, "a ramp from " + left + " to " + right);
  }

  @Test
  void tracesMove() throws Exception {
    await("some seconds", () -> tenths.get() > 30);
    await("ON", () -> browser.words("state-words").equals("OUTPUT ON"));
    BufferedImage before = picture("trace-1");
    TimeUnit.MILLISECONDS.sleep(1500);
    BufferedImage after = picture("trace-2");
    int[] from = viewPlace("trace", 0, 0);
    int[] to = viewPlace("trace", 1, 1);
    int changed = 0;
    Set<Integer> colours = new HashSet<>();
    for (int y = from[1]; y < Math.min(to[1], before.getHeight()); y++) {
      for (int x = from[0]; x < to[0]; x++) {
        changed += before.getRGB(x, y) != after.getRGB(x, y) ? 1 : 0;
        colours.add(after.getRGB(x, y) & 0xFFFFFF);
      }
    }
    assertTrue(changed > 500, changed + " pixels changed");
    assertTrue(colours.contains(0x1f5fae) && colours.contains(0x9a4f00), "volts and amperes");
  }

  @Test
  void spaceBarAndClickAskForAStop() throws Exception {
    await("the page", () -> browser.words("state-words").startsWith("O"));
    browser.pressSpace();
    await("the stop", () -> !stops.isEmpty());
    await("said", () -> browser.words("stop").startsWith("STOP heard"));
    int asked = stops.size();
    browser.click("stop");
    await("the second stop", () -> stops.size() > asked);
  }

  @Test
  void stopIsHeardWhileTheFrameOfPicturesHangsForGood() throws Exception {
    await("numbers", () -> browser.viewWords("volts").equals("1.000"));
    browser.viewValue("setTimeout(() => { for (;;) {} }, 0); 1");
    await("still", () -> browser.value("document.getElementById('still').hidden").equals("false"));
    assertTrue(browser.words("state-words").startsWith("O"), "the state goes on");
    browser.pressSpace();
    await("the stop", () -> !stops.isEmpty());
    int asked = stops.size();
    browser.click("stop");
    await("the stop by click", () -> stops.size() > asked);
  }

  @Test
  void aClickIntoThePicturesLeavesTheSpaceBarWithStop() throws Exception {
    await("numbers", () -> browser.viewWords("volts").equals("1.000"));
    browser.click("view");
    browser.pressSpace();
    await("the stop", () -> !stops.isEmpty());
    assertEquals(
        "true", browser.value("document.hasFocus() && document.activeElement.id !== 'view'"));
  }

  @Test
  void aReloadBringsTheHistoryBack() throws Exception {
    await("some seconds", () -> tenths.get() > 15 && !browser.viewWords("volts").equals("–"));
    page.onMessage("the clip gets warm");
    await("the message", () -> browser.viewWords("messages").contains("clip"));
    browser.command("Page.reload", browser.parameters());
    await("the message again", () -> browser.viewWords("messages").contains("clip"));
    await("the numbers", () -> !browser.viewWords("volts").equals("–"));
  }

  @Test
  void aLostConnectionIsSaidAndAnOrderlyEndIsNot() throws Exception {
    await("the page", () -> browser.words("state-words").startsWith("O"));
    run.shutdownNow();
    page.onEnded(
        new RunEnding(
            new Stop(StopCause.SURE_ENOUGH, 1, "sure after 5 cycles"), OutputState.PROVEN_OFF, ""));
    await("the end", () -> browser.words("state-more").contains("sure after 5 cycles"));
    page.close();
    await("the end said", () -> browser.words("state-more").contains("The program has ended"));
    assertEquals("OFF, proven", browser.words("state-words"));
  }

  @Test
  void aServerThatDiesLeavesNoTrustInTheState() throws Exception {
    await("the page", () -> browser.words("state-words").startsWith("O"));
    run.shutdownNow();
    page.close();
    await("lost", () -> browser.words("state-words").equals("NOT CONNECTED"));
    assertTrue(browser.words("state-more").contains("Trust only the supply"));
    picture("lost");
    browser.pressSpace();
    await("said", () -> browser.words("stop").contains("NOT HEARD"));
  }

  @Test
  void aWrongTokenShowsNothing() throws Exception {
    browser.open(page.address().replaceAll("token=.*", "token=wrong"));
    await("the refusal", () -> browser.value("document.body.textContent").contains("Not allowed"));
    assertFalse(browser.value("document.body.innerHTML").contains("STOP"));
  }

  @Test
  void itFitsAPhoneADeskAndAWallInBothSchemes() throws Exception {
    await("a frame", () -> browser.viewWords("now-scale").contains("°C"));
    page.onLook(PretendedRun.look(6, List.of(PretendedRun.source(0.01))));
    await("the verdict", () -> browser.viewWords("verdict").contains("Found"));
    for (int width : new int[] {390, 1024, 1920}) {
      for (String scheme : new String[] {"light", "dark"}) {
        browser.size(width, width == 390 ? 844 : 1080);
        browser.scheme(scheme);
        TimeUnit.MILLISECONDS.sleep(400);
        BufferedImage image = picture(width + "-" + scheme);
        String fits = "document.documentElement.scrollWidth <= innerWidth";
        assertEquals("true", browser.value(fits), "no sideways scrolling at " + width);
        assertEquals("true", browser.viewValue(fits), "nor of the frame at " + width);
        String whole =
            "Array.from(document.querySelectorAll('section')).every("
                + "s => s.scrollWidth <= s.clientWidth)";
        assertEquals("true", browser.value(whole), "nothing is cut off at " + width);
        assertEquals("true", browser.viewValue(whole), "nor in the frame at " + width);
        int[] stop = place("stop", 0.5, 0.5);
        assertTrue(stop[1] < image.getHeight() / 2, "STOP is in sight at once at " + width);
        int paper = brightness(image.getRGB(2, 2) & 0xFFFFFF);
        assertEquals(scheme.equals("light"), paper > 380, scheme + " paper " + paper);
      }
    }
  }
}

package railglow.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import railglow.observed.OutputState;
import railglow.run.RunEnding;
import railglow.safety.Stop;
import railglow.safety.StopCause;

/** The page as a real browser shows it. */
class LivePageInBrowserTest extends PageInBrowser {
  @Test
  void theStateReadsInWordsAndTheNumbersMove() throws Exception {
    await("ON", () -> browser.words("state-words").equals("OUTPUT ON"));
    await("volts", () -> browser.viewWords("volts").equals("1.000"));
    // the output goes off and on again every second, perhaps between two readings
    await("watts", () -> browser.viewWords("watts").equals("0.145"));
    await("OFF", () -> browser.words("state-words").equals("OFF, proven"));
    assertTrue(
        browser.viewWords("limits").contains("of 0.5 A (sequence)"), browser.viewWords("limits"));
    assertTrue(
        browser.viewWords("verdict").contains("Not yet certain"), browser.viewWords("verdict"));
  }

  @Test
  void anOutputThatGoesOffIsUnknownOnlyWhenItsProofTakesLong() throws Exception {
    run.shutdownNow();
    run.awaitTermination(1, TimeUnit.SECONDS);
    page.onProgress(PretendedRun.progress(1, OutputState.ON, null));
    await("ON", () -> browser.words("state-words").equals("OUTPUT ON"));
    page.onProgress(PretendedRun.progress(2, OutputState.UNKNOWN, null));
    await("going off", () -> browser.words("state-words").equals("GOING OFF"));
    await("unknown", () -> browser.words("state-words").equals("OUTPUT UNKNOWN"));
    page.onProgress(PretendedRun.progress(3, OutputState.PROVEN_OFF, null));
    await("OFF", () -> browser.words("state-words").equals("OFF, proven"));
    page.onProgress(PretendedRun.progress(4, OutputState.UNKNOWN, null));
    await("unknown at once", () -> browser.words("state-words").equals("OUTPUT UNKNOWN"));
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
  void aWrongTokenShowsNothing() throws Exception {
    browser.open(page.address().replaceAll("token=.*", "token=wrong"));
    await("the refusal", () -> browser.value("document.body.textContent").contains("Not allowed"));
    assertFalse(browser.value("document.body.innerHTML").contains("STOP"));
  }

  @Test
  void itFitsAPhoneADeskAndAWallInBothSchemes() throws Exception {
    page.onStage(LiveStage.FOUND, "touch 2, birch", "C37, 420 mK");
    page.onSilentMachine();
    page.onTouches(
        new LiveTouches(
            List.of(
                new LiveTouches.Row("1 amber", "C37, 551 mK", "141 mW", "least"),
                new LiveTouches.Row(
                    "2 birch", "C37, 420 mK", "96 mW", "+1.5 ohm, contact 1.42 ohm +- 200 mohm")),
            List.of(
                "Best: amber gave most power to the source: at most 141 mW",
                "Spoilt: birch: 1.5 ohm more in the way than at the best point, 32 % less power")));
    page.onMessage("cycle 4 does not count: the contact swung between 6.9 and 13 ohm");
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

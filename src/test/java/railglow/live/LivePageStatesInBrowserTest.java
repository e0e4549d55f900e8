package railglow.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import railglow.observed.OutputState;
import railglow.run.RunEnding;
import railglow.safety.Stop;
import railglow.safety.StopCause;
import railglow.time.SystemClock;

/**
 * Every state of the page, large enough and whole on a phone, a desk and a wall, light and dark.
 */
@Timeout(240)
class LivePageStatesInBrowserTest extends PageInBrowser {
  private static final String FOUND =
      "Heat at C37: it swings by 67.6 mK in step with the pulse (95 %: 66.3 mK to 68.9 mK); probability that noise alone"
          + " shows this: below one in a million.";
  private static final String NOTHING =
      "Nothing found that follows the pulse; a source above 41 mK would have been seen.";

  /** What is to be read, and in which element. */
  private record Wanted(String state, String stage) {}

  @Test
  void everyStateIsReadAtEveryWidthInBothSchemes() throws Exception {
    run.shutdownNow();
    run.awaitTermination(1, TimeUnit.SECONDS);
    Map<String, Wanted> states = new LinkedHashMap<>();
    states.put("hunt-running", new Wanted("OUTPUT ON", "Running"));
    states.put("hunt-found", new Wanted("OFF, proven", "Found"));
    states.put("hunt-nothing", new Wanted("OFF, proven", "Nothing found"));
    states.put("hunt-limit", new Wanted("OFF, proven", "Stopped"));
    states.put("hunt-unknown", new Wanted("OUTPUT UNKNOWN", "Stopped"));
    states.put("hunt-no-news", new Wanted("NO NEWS", "Last known: Running"));
    states.put("touch-listening", new Wanted("OUTPUT ON", "Listening"));
    states.put("touch-unsteady", new Wanted("OUTPUT ON", "Contact unsteady"));
    states.put("touch-still", new Wanted("OFF, proven", "Keep still"));
    states.put("touch-found", new Wanted("OFF, proven", "Found: lift the probe"));
    states.put("touch-ended", new Wanted("OFF, proven", "Session ended"));
    states.put("hunt-lost", new Wanted("NOT CONNECTED", "Last known: Running"));
    for (Map.Entry<String, Wanted> state : states.entrySet()) {
      page.close();
      page = PretendedRun.page(stops::add);
      browser.size(1000, 800);
      browser.open(page.address());
      await("the page", () -> browser.words("state-words").equals("OUTPUT UNKNOWN"));
      measured(state.getKey());
      bringAbout(state.getKey());
      Wanted wanted = state.getValue();
      await(state.getKey(), () -> browser.words("state-words").equals(wanted.state()));
      await(state.getKey(), () -> browser.words("stage-words").contains(wanted.stage()));
      TimeUnit.MILLISECONDS.sleep(300);
      assertIsRead(state.getKey());
    }
  }

  /** A run of some cycles that has seen something. */
  private void measured(String name) throws Exception {
    for (int i = 0; i < 60; i++) {
      OutputState output = i / 10 % 2 == 0 ? OutputState.ON : OutputState.PROVEN_OFF;
      page.onProgress(PretendedRun.progress(i * 0.1, output, PretendedRun.source(0.2)));
    }
    await("a viewer", page::isWatched);
    page.onFrame(PretendedRun.frame(1, 29600, 29800));
    boolean found = name.endsWith("found") || name.startsWith("touch");
    page.onLook(PretendedRun.look(6, found ? List.of(PretendedRun.source(0.01)) : List.of()));
    await("a frame", () -> browser.viewWords("now-scale").contains("°C"));
  }

  private void bringAbout(String name) {
    String point = "touch 2, birch";
    switch (name) {
      case "hunt-running", "hunt-no-news", "hunt-lost" -> {
        progress(OutputState.ON);
        page.onStage(LiveStage.MEASURING, "", "");
        if (name.equals("hunt-running")) {
          goOn();
        }
        if (name.equals("hunt-lost")) {
          page.close();
        }
      }
      case "hunt-found" -> {
        ended(StopCause.SURE_ENOUGH, "sure enough after 11 cycles", OutputState.PROVEN_OFF, "");
        page.onStage(LiveStage.HEAT_FOUND, "", FOUND);
      }
      case "hunt-nothing" -> {
        ended(StopCause.PROGRAMME_FINISHED, "150 cycles are done", OutputState.PROVEN_OFF, "");
        page.onStage(LiveStage.NO_HEAT, "", NOTHING);
      }
      case "hunt-limit" ->
          ended(
              StopCause.TEMPERATURE_ABOVE_LIMIT,
              "hottest pixel 71.2 degC, allowed at most 70 degC (bench file)",
              OutputState.PROVEN_OFF,
              "");
      case "hunt-unknown" ->
          ended(
              StopCause.LINK_LOST,
              "the supply gave no answer to 'OUTP OFF;:OUTP?' within 0.5 s",
              OutputState.UNKNOWN,
              "the supply did not answer whether its output is off");
      case "touch-listening" -> {
        page.onStage(LiveStage.LISTENING, point, "");
        goOn();
      }
      case "touch-unsteady" -> {
        page.onStage(
            LiveStage.UNSTEADY,
            point,
            "the contact does not settle: its resistance swings from 6.637 ohm to open; press"
                + " harder, clean the pad, or rest the hand");
        goOn();
      }
      case "touch-still" -> {
        page.onBegun();
        page.onStage(LiveStage.KEEP_STILL, point, "rail 6.757 ohm, contact below 434.7 mohm");
        page.onBetween(OutputState.PROVEN_OFF);
      }
      default -> {
        touches();
        page.onBetween(OutputState.PROVEN_OFF);
        page.onStage(LiveStage.FOUND, point, "C37, 420 mK");
        if (name.equals("touch-ended")) {
          page.onStage(LiveStage.SESSION_ENDED, "", "");
          ended(
              StopCause.OPERATOR_REQUEST,
              "the contact is lost: 0.10 mA at 0.999 V with the output on",
              OutputState.PROVEN_OFF,
              "");
        }
      }
    }
  }

  private void touches() {
    page.onTouches(
        new LiveTouches(
            List.of(
                new LiveTouches.Row("1 amber", "C37, 551 mK", "141 mW", "least"),
                new LiveTouches.Row(
                    "2 birch", "C37, 420 mK", "96 mW", "+1.5 ohm, contact 1.42 ohm +- 200 mohm")),
            List.of(
                "Best: amber gave most power to the source: at most 141 mW",
                "Spoilt: birch: 1.5 ohm more in the way than at the best point, 32 % less power")));
  }

  private void ended(StopCause cause, String evidence, OutputState output, String doubt) {
    progress(output);
    page.onStage(LiveStage.MEASURING, "", "");
    if (cause == StopCause.OPERATOR_REQUEST) {
      page.onStage(LiveStage.SESSION_ENDED, "", "");
    }
    page.onEnded(new RunEnding(new Stop(cause, 1, evidence), output, doubt));
  }

  private void progress(OutputState output) {
    page.onProgress(PretendedRun.progress(21, output, PretendedRun.source(0.2)));
  }

  /** Readings go on at the sensing level, or those of a run do. */
  private void goOn() {
    LivePage of = page;
    Thread news =
        new Thread(
            () -> {
              while (of == page) {
                of.onReading(
                    new LiveReading(SystemClock.INSTANCE.nanos(), OutputState.ON, 0.05, 0.0071));
                railglow.time.Pause.nanos(200_000_000);
              }
            },
            "news");
    news.setDaemon(true);
    news.start();
  }

  private void assertIsRead(String name) throws Exception {
    for (int width : new int[] {390, 1000, 1900}) {
      browser.size(width, width == 390 ? 844 : 1000);
      for (String scheme : new String[] {"light", "dark"}) {
        browser.scheme(scheme);
        TimeUnit.MILLISECONDS.sleep(150);
        picture(name + "-" + width + "-" + scheme);
      }
      String at = name + " at " + width;
      String fits = "document.documentElement.scrollWidth <= innerWidth";
      assertEquals("true", browser.value(fits), at + " scrolls sideways");
      assertEquals("true", browser.viewValue(fits), at + " scrolls sideways in its frame");
      String whole =
          "Array.from(document.querySelectorAll('section, section div, button'))"
              + ".filter(s => s.scrollWidth > s.clientWidth + 1).map(s => s.id).join()";
      assertEquals("", browser.value(whole), at + " is cut off");
      assertEquals("", browser.viewValue(whole), at + " is cut off in its frame");
      for (String id : new String[] {"state-words", "stop-words", "stage-words"}) {
        double height = size(id);
        // 16 minutes of arc are the least height of a character in ISO 9241-303 (from memory): from
        // two metres 9.3 mm, on a screen of 96 dpi capitals of type of 50 pixels; a phone with its
        // 160 dpi lies at arm's length, 0.8 m.
        assertTrue(height >= (width == 390 ? 33 : 50), at + ": " + id + " of " + height);
        assertTrue(place(id, 0, 1)[1] < 844, at + ": " + id + " is not in sight at once");
      }
    }
  }

  private static double size(String id) throws Exception {
    return number(
        browser.value(
            "parseFloat(getComputedStyle(document.getElementById('" + id + "')).fontSize)"));
  }
}

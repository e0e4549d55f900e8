package railglow.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import railglow.live.sound.Sound;

/** STOP, lost connections, tabs and sounds in a real browser. */
class LiveStopInBrowserTest extends PageInBrowser {
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
  void severalTabsOfOneBrowserAreAllServedAndStopIsHeardFromTheFirst() throws Exception {
    for (int i = 0; i < 7; i++) {
      browser.openBeside(page.address());
    }
    int drawn = Integer.parseInt("0" + browser.viewValue("document.body?.dataset.drawn || ''"));
    await(
        "more pictures",
        () ->
            Integer.parseInt("0" + browser.viewValue("document.body?.dataset.drawn || ''"))
                > drawn + 5);
    browser.pressSpace();
    await("the stop", () -> !stops.isEmpty());
    browser.closeOthers();
  }

  @Test
  void soundsAreMadeOnThePageOnceItHasBeenAskedToAndOnlyNewOnes() throws Exception {
    page.onSound(Sound.LIFT);
    page.onStage(LiveStage.LISTENING, "touch 1, amber", "");
    page.onSilentMachine();
    await("the button", () -> browser.words("sound").contains("press S"));
    assertEquals("undefined", browser.value("String(sounds.count)"));
    browser.press("s", "KeyS", 83);
    await("its own tick", () -> browser.value("String(sounds.count)").equals("1"));
    await("running", () -> browser.value("sounds.context.state").equals("running"));
    page.onSound(Sound.FOUND);
    await("the new one", () -> browser.value("String(sounds.count)").equals("2"));
    assertTrue(stops.isEmpty(), "a key that is no space bar stops nothing");
    browser.press("s", "KeyS", 83);
    await("off", () -> browser.words("sound").contains("press S"));
    page.onSound(Sound.LIFT);
    await("told", () -> browser.value("String(sounds.played)").equals("3"));
    assertEquals("2", browser.value("String(sounds.count)"));
  }
}

package railglow.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.util.List;
import org.junit.jupiter.api.Test;
import railglow.live.sound.Sound;
import railglow.process.ChildJava;
import railglow.time.SystemClock;

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

  @Test
  void aSilentSessionIsSilentOnThePageToo() throws Exception {
    page.close();
    page =
        LivePage.start(
            PretendedRun.facts(0), LiveDoor.ofThisMachine(0), SystemClock.INSTANCE, stops::add);
    page.onStage(LiveStage.LISTENING, "touch 1, amber", "");
    page.onSilentMachine();
    browser.open(page.address());
    await("the scores", () -> browser.value("String(sounds.book?.volume)").equals("0"));
    browser.press("s", "KeyS", 83);
    page.onSound(Sound.FOUND);
    await("told", () -> browser.value("String(sounds.played)").equals("1"));
    assertEquals("true", browser.value("document.getElementById('sound').hidden"));
    assertEquals("null", browser.value("String(sounds.context)"));
    assertEquals("undefined", browser.value("String(sounds.count)"));
  }

  @Test
  void aProgramThatStandsStillWithItsSocketsOpenIsSaidToBeLostAndIsBackWhenItGoesOn()
      throws Exception {
    Process program =
        ChildJava.of(List.of(), PretendedPageMain.class)
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    try (BufferedReader said = program.inputReader()) {
      browser.open(said.readLine());
      await("the page", () -> browser.words("state-words").equals("OUTPUT ON"));
      await("numbers", () -> browser.viewWords("volts").equals("1.000"));
      signal(program, "STOP");
      await("lost", () -> browser.words("state-words").equals("NOT CONNECTED"));
      assertTrue(browser.words("state-more").contains("Trust only the supply"));
      assertTrue(browser.words("stage-words").startsWith("Last known"));
      browser.pressSpace();
      await("said", () -> browser.words("stop").contains("NOT HEARD"));
      signal(program, "CONT");
      await("back", () -> browser.words("state-words").equals("OUTPUT ON"));
      assertEquals("STOP on the live page", said.readLine(), "what had waited in the socket");
    } finally {
      program.destroyForcibly();
    }
  }

  private static void signal(Process program, String name) throws Exception {
    new ProcessBuilder("kill", "-" + name, Long.toString(program.pid())).start().waitFor();
  }
}

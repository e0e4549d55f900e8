package railglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import railglow.live.Browser;
import railglow.sim.BenchPorts;
import railglow.sim.BenchScenario;
import railglow.sim.BenchScenarios;
import railglow.sim.SimulatedBench;
import railglow.sim.hand.HandMove;
import railglow.sim.hand.HandScript;
import railglow.sim.truth.TruthEvent;
import railglow.time.SystemClock;

/** A real run watched and stopped in a real browser, judged by the simulated bench's truth. */
@Timeout(90)
class LiveHuntTest {
  private final Typed typed = Typed.together();

  @Test
  void theSpaceBarSwitchesTheSupplyOff(@TempDir Path folder) throws Exception {
    assumeTrue(Browser.isInstalled(), "no Chromium at /usr/bin/chromium");
    try (SimulatedBench bench = bench(BenchScenarios.named("healthy").orElseThrow());
        Browser browser = new Browser(folder.resolve("profile"))) {
      CompletableFuture<Integer> exitCode = start("hunt", bench, folder);
      browser.open(await(exitCode, () -> address()));
      await(exitCode, () -> browser.words("state-words").equals("OUTPUT ON") ? "" : null);
      await(exitCode, () -> browser.viewWords("now-scale").contains("°C") ? "" : null);
      assertSpaceBarStops(browser, bench, exitCode);
    }
  }

  @Test
  void onePageGoesThroughAHandsFreeSessionAndItsSpaceBarStopsTheTouch(@TempDir Path folder)
      throws Exception {
    assumeTrue(Browser.isInstalled(), "no Chromium at /usr/bin/chromium");
    HandScript hand = new HandScript(List.of(HandMove.parse("touch:C9@6s..80s")));
    try (SimulatedBench bench = bench(BenchScenarios.hx12().withHand(hand));
        Browser browser = new Browser(folder.resolve("profile"))) {
      CompletableFuture<Integer> exitCode =
          start("touch", bench, folder, "--no-keys", "--labels", "near,far");
      browser.open(await(exitCode, () -> address()));
      stage(browser, exitCode, "Listening");
      await(exitCode, () -> browser.words("state-more").endsWith("touch 1, near") ? "" : null);
      stage(browser, exitCode, "Running");
      await(exitCode, () -> browser.words("state-words").equals("OUTPUT ON") ? "" : null);
      assertSpaceBarStops(browser, bench, exitCode);
    }
  }

  private void stage(Browser browser, CompletableFuture<Integer> run, String words)
      throws Exception {
    await(run, () -> browser.words("stage-words").contains(words) ? "" : null);
  }

  private void assertSpaceBarStops(
      Browser browser, SimulatedBench bench, CompletableFuture<Integer> exitCode) throws Exception {
    long pressed = bench.nanos();
    browser.pressSpace();
    assertEquals(ExitCode.STOPPED_BY_OPERATOR, exitCode.get(60, TimeUnit.SECONDS), said());
    assertTrue(
        bench.truth().events(TruthEvent.Kind.OUTPUT).stream()
            .filter(event -> event.nanos() >= pressed)
            .anyMatch(event -> Boolean.FALSE.equals(event.facts().get("on"))));
    assertFalse(bench.truth().outputIsOn());
    assertTrue(said().contains("STOP on the live page"), said());
  }

  private static SimulatedBench bench(BenchScenario scenario) throws IOException {
    return SimulatedBench.start(scenario, BenchPorts.ANY, SystemClock.INSTANCE);
  }

  private CompletableFuture<Integer> start(
      String command, SimulatedBench bench, Path folder, String... more) throws IOException {
    List<String> words =
        new ArrayList<>(
            List.of(
                command,
                "--bench",
                benchFile(bench, folder).toString(),
                "--board",
                "hx12",
                "--rail",
                "3V3",
                "--live",
                "--live-port",
                "0",
                "--runs",
                folder.resolve("runs").toString()));
    words.addAll(List.of(more));
    return CompletableFuture.supplyAsync(() -> typed.run(words.toArray(String[]::new)));
  }

  private static Path benchFile(SimulatedBench bench, Path folder) throws IOException {
    Path instruments = Path.of("instruments").toAbsolutePath();
    for (String name : new String[] {"supply-simulated.yaml", "camera-simulated.yaml"}) {
      Files.copy(instruments.resolve(name), folder.resolve(name));
    }
    String text =
        Files.readString(instruments.resolve("bench-simulated.yaml"))
            .replace("tcp://127.0.0.1:5025", SimulatedBenches.supplyAddress(bench))
            .replace("tcp://127.0.0.1:5600", SimulatedBenches.cameraAddress(bench));
    return Files.writeString(folder.resolve("bench.yaml"), text);
  }

  private String said() {
    return typed.answers();
  }

  private String address() {
    Matcher matcher = Pattern.compile("Live page +(http://\\S+)").matcher(said());
    return matcher.find() ? matcher.group(1) : null;
  }

  private interface Wanted {
    String get() throws Exception;
  }

  private String await(CompletableFuture<Integer> run, Wanted wanted) throws Exception {
    for (int i = 0; i < 1500; i++) {
      String found = wanted.get();
      if (found != null) {
        return found;
      }
      assertFalse(run.isDone(), "the run ended: " + said());
      TimeUnit.MILLISECONDS.sleep(20);
    }
    throw new AssertionError("waited in vain: " + said());
  }
}

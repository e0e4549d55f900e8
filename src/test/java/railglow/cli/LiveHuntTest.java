package railglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import railglow.live.Browser;
import railglow.sim.BenchPorts;
import railglow.sim.BenchScenarios;
import railglow.sim.SimulatedBench;
import railglow.sim.truth.TruthEvent;
import railglow.time.SystemClock;

/** A real run watched and stopped in a real browser, judged by the simulated bench's truth. */
@Timeout(90)
class LiveHuntTest {
  private final ByteArrayOutputStream words = new ByteArrayOutputStream();

  @Test
  void theSpaceBarSwitchesTheSupplyOff(@TempDir Path folder) throws Exception {
    assumeTrue(Browser.isInstalled(), "no Chromium at /usr/bin/chromium");
    try (SimulatedBench bench =
            SimulatedBench.start(
                BenchScenarios.named("healthy").orElseThrow(),
                BenchPorts.ANY,
                SystemClock.INSTANCE);
        Browser browser = new Browser(folder.resolve("profile"))) {
      Path benchFile = benchFile(bench, folder);
      CompletableFuture<Integer> exitCode =
          CompletableFuture.supplyAsync(
              () ->
                  Main.run(
                      new Terminal(print(), print(), false),
                      "hunt",
                      "--bench",
                      benchFile.toString(),
                      "--board",
                      "hx12",
                      "--rail",
                      "3V3",
                      "--live",
                      "--live-port",
                      "0",
                      "--runs",
                      folder.resolve("runs").toString()));
      browser.open(await(exitCode, () -> address()));
      await(exitCode, () -> browser.words("state-words").equals("OUTPUT ON") ? "" : null);
      await(exitCode, () -> browser.words("now-scale").contains("°C") ? "" : null);
      long pressed = bench.nanos();
      browser.pressSpace();
      assertEquals(ExitCode.STOPPED_BY_OPERATOR, exitCode.get(60, TimeUnit.SECONDS), said());
      TruthEvent off =
          bench.truth().events(TruthEvent.Kind.OUTPUT).stream()
              .filter(event -> event.nanos() >= pressed)
              .filter(event -> Boolean.FALSE.equals(event.facts().get("on")))
              .findFirst()
              .orElseThrow();
      assertFalse(bench.truth().outputIsOn());
      double millis = (off.nanos() - pressed) / 1e6;
      assertTrue(millis < 2000, millis + " ms from the key to the output's end on a busy machine");
      assertTrue(said().contains("STOP on the live page"), said());
    }
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

  private PrintStream print() {
    return new PrintStream(words, true, StandardCharsets.UTF_8);
  }

  private String said() {
    return words.toString(StandardCharsets.UTF_8);
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

package railglow.supply;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import railglow.config.SupplyDescriptorFile;
import railglow.safety.StopCause;
import railglow.sim.wire.SupplySettings;
import railglow.sim.wire.SupplySettings.StatusFamily;

/**
 * Supplies of many kinds, each described by a text file only, in a pulsed run of keeper and
 * conductor over a real socket, serial line or USB device file (both played by a pseudo-terminal).
 */
class EverySupplyTest {
  private static final String TWO_CHANNELS =
      "channels:\n  - voltage: {lowest: 0 V, highest: 30 V, meter-error: 15 mV}\n"
          + "    current: {lowest: 1 mA, highest: 3 A, meter-error: 8 mA}\n";

  @TempDir static Path folder;

  private record Kind(
      String name, SupplySettings supply, SupplyDescriptor descriptor, int channel, String scheme) {
    boolean onDevice() {
      return !scheme.isEmpty();
    }
  }

  private static SupplyDescriptor described(String file, String... pairs) throws Exception {
    Path path = Path.of("instruments", file);
    String text = Files.readString(path);
    for (int i = 0; i < pairs.length; i += 2) {
      assertFalse(!text.contains(pairs[i]), pairs[i]);
      text = text.replace(pairs[i], pairs[i + 1]);
    }
    return SupplyDescriptorFile.parse(path, text);
  }

  private static List<Kind> kinds() throws Exception {
    String inOperation = "supply-scpi-regulation-in-operation.yaml";
    SupplySettings usual = SupplySettings.usual();
    return List.of(
        new Kind("regulation in OPERation, as shipped", usual, described(inOperation), 1, ""),
        new Kind(
            "regulation in QUEStionable, as shipped",
            usual.withFamily(StatusFamily.REGULATION_IN_QUESTIONABLE),
            described("supply-scpi-regulation-in-questionable.yaml"),
            1,
            ""),
        new Kind(
            "serial, CR, echo, 9600 baud, deaf after each message, one word in each message",
            usual.withWire(
                usual
                    .wire()
                    .withEnds('\r', "\r")
                    .withEcho(true)
                    .withBaud(9600)
                    .withDeafSeconds(0.005)),
            described(
                inOperation,
                "send-end: lf",
                "send-end: cr",
                "reply-end: lf",
                "reply-end: cr",
                "pause: 5 ms",
                "pause: 15 ms\n  echo: yes",
                "compound: yes",
                "compound: no",
                "reading-interval: 100 ms",
                "reading-interval: 200 ms"),
            1,
            "serial:"),
        new Kind(
            "serial, CR LF, without marker, error queue and protections",
            usual.withWire(usual.wire().withEnds('\n', "\r\n")),
            described(
                inOperation,
                "reply-end: lf",
                "reply-end: crlf",
                "  marker:\n    set: \"*ESE {number}\"\n    ask: \"*ESE?\"\n    lowest: 1\n"
                    + "    highest: 255\n",
                "",
                "  error-query: \"SYST:ERR?\"\n",
                ""),
            1,
            "serial:"),
        new Kind(
            "two channels, the second selected in every message",
            usual.withChannels(2),
            described(
                inOperation,
                "channels:\n",
                TWO_CHANNELS,
                "  identify:",
                "  select-channel: \"INST:NSEL {channel}\"\n  identify:"),
            2,
            ""),
        new Kind(
            "two channels, the second named in every word",
            usual.withChannels(2),
            described(
                inOperation,
                "channels:\n",
                TWO_CHANNELS,
                "\"OUTP ON\"",
                "\"OUTP ON,(@{channel})\"",
                "\"OUTP OFF\"",
                "\"OUTP OFF,(@{channel})\"",
                "\"OUTP?\"",
                "\"OUTP? (@{channel})\"",
                "VOLT {volts}",
                "VOLT {volts},(@{channel})",
                "\"VOLT?\"",
                "\"VOLT? (@{channel})\"",
                "CURR {amperes}",
                "CURR {amperes},(@{channel})",
                "\"CURR?\"",
                "\"CURR? (@{channel})\"",
                "\"MEAS:VOLT?\"",
                "\"MEAS:VOLT? (@{channel})\"",
                "\"MEAS:CURR?\"",
                "\"MEAS:CURR? (@{channel})\"",
                "VOLT:PROT {volts}",
                "VOLT:PROT {volts},(@{channel})",
                "\"VOLT:PROT?\"",
                "\"VOLT:PROT? (@{channel})\"",
                "CURR:PROT {amperes}",
                "CURR:PROT {amperes},(@{channel})",
                "\"CURR:PROT?\"",
                "\"CURR:PROT? (@{channel})\"",
                "CURR:PROT:STAT ON",
                "CURR:PROT:STAT ON,(@{channel})",
                "STAT:OPER:COND?",
                "STAT:OPER:INST:ISUM{channel}:COND?",
                "STAT:QUES:COND?",
                "STAT:QUES:INST:ISUM{channel}:COND?"),
            2,
            ""),
        new Kind("USB device file", usual, Descriptors.simulated(), 1, "usbtmc:"));
  }

  @TestFactory
  Stream<DynamicTest> everyKindRunsItsPulsesAndEndsProvenOff() throws Exception {
    List<Kind> kinds = kinds();
    ExecutorService pool = Executors.newFixedThreadPool(kinds.size());
    List<DynamicTest> tests = new ArrayList<>();
    for (int i = 0; i < kinds.size(); i++) {
      Kind kind = kinds.get(i);
      Optional<Path> device =
          kind.onDevice() ? Optional.of(folder.resolve("device" + i)) : Optional.empty();
      Future<FaultRun.Outcome> future =
          kind.onDevice() && !FaultMatrixTest.hasSocat()
              ? null
              : pool.submit(() -> run(kind, device));
      tests.add(DynamicTest.dynamicTest(kind.name, () -> check(kind, future)));
    }
    pool.shutdown();
    return tests.stream();
  }

  private static FaultRun.Outcome run(Kind kind, Optional<Path> device) throws Exception {
    FaultRun.Outcome outcome = null;
    for (int i = 0; i < 3; i++) {
      outcome = FaultRun.of(kind.supply, kind.descriptor, kind.channel, device, kind.scheme).run();
      if (!FaultMatrixTest.BY_A_BUSY_MACHINE.contains(outcome.ending().stop().cause())) {
        return outcome;
      }
    }
    return outcome;
  }

  private static void check(Kind kind, Future<FaultRun.Outcome> future) throws Exception {
    Assumptions.assumeTrue(future != null, "socat is not installed, so there is no terminal");
    FaultRun.Outcome outcome = future.get();
    assertEquals(
        StopCause.PROGRAMME_FINISHED,
        outcome.ending().stop().cause(),
        outcome.ending().stop().evidence());
    assertEquals(0, outcome.ending().exitCode(), outcome.ending().doubt());
    assertFalse(outcome.trulyOn());
    for (int channel = 1; channel <= kind.supply.channels(); channel++) {
      int expected = channel == kind.channel ? 2 : 0;
      assertEquals(expected, outcome.timesOn().get(channel - 1), "times channel was on");
    }
  }
}

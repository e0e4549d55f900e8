package railglow.supply;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import railglow.config.ConfigException;
import railglow.config.SupplyDescriptorFile;
import railglow.link.MemoryPort;
import railglow.link.PortLink;
import railglow.link.Transcript;
import railglow.sim.BenchScenario;
import railglow.sim.BenchScenarios;
import railglow.sim.BenchWorld;
import railglow.sim.truth.TruthLog;
import railglow.sim.wire.SupplySettings;
import railglow.time.InventedClock;

/** The driver and what is built on it against the simulated supply, in invented time. */
class ScpiSupplyOnTheSimulatedSupplyTest {
  private static final long REPLY_NANOS = 2_000_000;
  private final InventedClock clock = new InventedClock(1_000_000_000);
  private final List<String> lines = new ArrayList<>();
  private BenchWorld world = world(SupplySettings.usual());

  private BenchWorld world(SupplySettings settings) {
    BenchScenario scenario = BenchScenarios.hx12().withSupply(settings);
    return new BenchWorld(scenario, clock.nanos(), new TruthLog());
  }

  private PortLink link(SupplyDescriptor descriptor) {
    StringBuilder line = new StringBuilder();
    MemoryPort port =
        new MemoryPort(
            clock,
            (text, wire) -> {
              for (char c : text.toCharArray()) {
                if (c != '\n') {
                  line.append(c);
                  continue;
                }
                lines.add(line.toString());
                String reply = world.receive(line.toString(), wire.nowNanos());
                line.setLength(0);
                if (reply != null) {
                  wire.deliver(reply + "\n", REPLY_NANOS);
                }
              }
            });
    return new PortLink(port, descriptor.wire().link(), clock, Transcript.NONE);
  }

  private ScpiSupply connect(SupplyDescriptor descriptor, int channel) throws SupplyException {
    return ScpiSupply.connect(link(descriptor), descriptor, channel);
  }

  private static SupplyDescriptor changed(String... pairs) throws Exception {
    Path path = Path.of("instruments/supply-simulated.yaml");
    String text = Files.readString(path);
    for (int i = 0; i < pairs.length; i += 2) {
      assertTrue(text.contains(pairs[i]), pairs[i]);
      text = text.replace(pairs[i], pairs[i + 1]);
    }
    return SupplyDescriptorFile.parse(path, text);
  }

  @Test
  void theWordsAreThoseOfTheDescriptorAndNothingElse() throws SupplyException {
    ScpiSupply supply = connect(Descriptors.simulated(), 1);

    supply.setVolts(1.25);
    assertEquals(1.25, supply.voltsSetting().orElseThrow());
    assertEquals(SwitchState.ON, supply.switchOn());
    ReadingDraft draft = new ReadingDraft();
    draft.clear();
    supply.readPart(0, draft);
    assertEquals(SwitchState.OFF, supply.switchOff());
    assertEquals(Optional.empty(), supply.nextError());

    assertEquals(
        List.of(
            "*IDN?",
            "VOLT 1.25",
            "VOLT?",
            "OUTP ON;:OUTP?",
            "MEAS:VOLT?;:MEAS:CURR?;:OUTP?;:STAT:OPER:COND?;:STAT:QUES:COND?",
            "OUTP OFF;:OUTP?",
            "SYST:ERR?"),
        lines);
  }

  @Test
  void withoutCompoundQueriesEveryWordIsAMessageOfItsOwn() throws SupplyException {
    ScpiSupply supply = connect(Descriptors.withoutCompound(Descriptors.simulated()), 1);
    lines.clear();

    assertEquals(SwitchState.NOT_TOLD, supply.switchOn());
    assertEquals(SwitchState.ON, supply.readSwitch());
    assertEquals(5, supply.readingExchanges());
    supply.switchOff();

    assertEquals(List.of("OUTP ON", "OUTP?", "OUTP OFF"), lines);
  }

  @Test
  void somethingElseAtTheAddressIsNamedAndGetsNothingButOff() throws Exception {
    SupplyDescriptor other = changed("^Railglow,SimulatedSupply,", "^Somebody,Else,");

    SupplyException e = assertThrows(SupplyException.class, () -> connect(other, 1));

    assertEquals(SupplyException.Kind.WRONG_SUPPLY, e.kind());
    assertTrue(e.getMessage().contains("'Railglow,SimulatedSupply,"), e.getMessage());
    assertEquals(List.of("*IDN?", "OUTP OFF"), lines);
  }

  @Test
  void aChannelIsSelectedInEveryMessage() throws Exception {
    world = world(SupplySettings.usual().withChannels(2));
    ScpiSupply supply =
        connect(
            changed(
                "channels:\n",
                "channels:\n  - voltage: {lowest: 0 V, highest: 30 V, meter-error: 5 mV}\n"
                    + "    current: {lowest: 1 mA, highest: 5 A, meter-error: 2 mA}\n",
                "  output-on:",
                "  select-channel: \"INST:NSEL {channel}\"\n  output-on:"),
            2);
    lines.clear();

    supply.setVolts(2);
    supply.switchOn();

    assertEquals(List.of("INST:NSEL 2;:VOLT 2", "INST:NSEL 2;:OUTP ON;:OUTP?"), lines);
    assertTrue(world.supply().output(2).isOn());
    assertFalse(world.supply().output(1).isOn());
  }

  @Test
  void aChannelIsNamedInAListAfterEveryWord() throws Exception {
    world = world(SupplySettings.usual().withChannels(2));
    ScpiSupply supply =
        connect(
            changed(
                "channels:\n",
                "channels:\n  - voltage: {lowest: 0 V, highest: 30 V, meter-error: 5 mV}\n"
                    + "    current: {lowest: 1 mA, highest: 5 A, meter-error: 2 mA}\n",
                "\"OUTP ON\"",
                "\"OUTP ON,(@{channel})\"",
                "\"OUTP OFF\"",
                "\"OUTP OFF,(@{channel})\"",
                "\"OUTP?\"",
                "\"OUTP? (@{channel})\"",
                "\"VOLT {volts}\"",
                "\"VOLT {volts},(@{channel})\"",
                "\"CURR {amperes}\"",
                "\"CURR {amperes},(@{channel})\"",
                "\"MEAS:VOLT?\"",
                "\"MEAS:VOLT? (@{channel})\"",
                "\"MEAS:CURR?\"",
                "\"MEAS:CURR? (@{channel})\""),
            2);
    supply.setVolts(2);

    assertEquals(SwitchState.ON, supply.switchOn());

    assertTrue(world.supply().output(2).isOn());
    assertFalse(world.supply().output(1).isOn());
    assertEquals(Optional.empty(), supply.nextError());
  }

  @Test
  void theCheckFindsThatEverythingWorksAndNeverSwitchesOn() throws SupplyException {
    SupplyCheck.Outcome outcome =
        new SupplyCheck(connect(Descriptors.simulated(), 1), clock, clock::advance)
            .run(1_000_000_000);

    assertTrue(outcome.works(), outcome.toString());
    assertEquals(12, outcome.items().size(), outcome.toString());
    assertTrue(lines.stream().noneMatch(line -> line.contains("OUTP ON")), lines.toString());
  }

  @Test
  void aDescriptorThatLiesIsFoundByTheCheckInTheSuppliesOwnWords() throws Exception {
    SupplyDescriptor liar = changed("\"VOLT:PROT {volts}\"", "\"VOLT:GUARD {volts}\"");

    SupplyCheck.Outcome outcome =
        new SupplyCheck(connect(liar, 1), clock, clock::advance).run(1_000_000_000);

    List<SupplyCheck.Item> bad = outcome.items().stream().filter(i -> !i.works()).toList();
    assertEquals(1, bad.size(), outcome.toString());
    assertEquals("over-voltage protection", bad.get(0).what());
    assertTrue(bad.get(0).detail().contains("-113"), bad.get(0).detail());
    assertTrue(outcome.provenOff());
  }

  @Test
  void aSettingThatReadsBackAsAnotherFailsTheCheckWithBothValues() throws Exception {
    SupplyDescriptor wrongQuery = changed("\"CURR:PROT?\"", "\"CURR?\"");

    SupplyCheck.Outcome outcome =
        new SupplyCheck(connect(wrongQuery, 1), clock, clock::advance).run(1_000_000_000);

    List<SupplyCheck.Item> bad = outcome.items().stream().filter(i -> !i.works()).toList();
    assertEquals(1, bad.size(), outcome.toString());
    assertTrue(
        bad.get(0).detail().contains("over-current protection of 5.5 A but says it is set to 1 mA"),
        bad.get(0).detail());
  }

  @Test
  void offWithNothingKnownButTheAddressDrivesOffAndProvesIt() throws ConfigException {
    world.receive("VOLT 5;:CURR 1;:OUTP ON", clock.nanos());
    lines.clear();

    List<EmergencyOff.Result> results =
        new EmergencyOff(this::link, List.of(), 1_000_000_000, clock, clock::advance).drive();

    assertEquals("OUTP OFF", lines.get(0));
    assertTrue(results.get(0).proven(), results.toString());
    assertFalse(world.supply().output(1).isReallyOn());
  }

  @Test
  void offReachesEveryOutputBeforeTheFirstIsProven() throws Exception {
    world = world(SupplySettings.usual().withChannels(2));
    world.receive("INST:NSEL 2;:VOLT 5;:CURR 1;:OUTP ON", clock.nanos());
    world.receive("INST:NSEL 1;:VOLT 5;:CURR 1;:OUTP ON", clock.nanos());
    lines.clear();
    SupplyDescriptor two =
        changed(
            "channels:\n",
            "channels:\n  - voltage: {lowest: 0 V, highest: 30 V, meter-error: 5 mV}\n"
                + "    current: {lowest: 1 mA, highest: 5 A, meter-error: 2 mA}\n",
            "  output-on:",
            "  select-channel: \"INST:NSEL {channel}\"\n  output-on:");

    List<EmergencyOff.Result> results =
        new EmergencyOff(this::link, List.of(two), 1_000_000_000, clock, clock::advance).drive();

    int second = lines.indexOf("INST:NSEL 2;:OUTP OFF");
    int firstLook = lines.indexOf("INST:NSEL 1;:OUTP OFF;:OUTP?");
    assertTrue(second >= 0 && second < firstLook, lines.toString());
    assertEquals(2, results.size());
    assertTrue(results.stream().allMatch(EmergencyOff.Result::proven), results.toString());
    assertFalse(world.supply().output(2).isReallyOn());
  }

  @Test
  void offTellsTheTruthWhenTheSupplyIgnoresIt() {
    world.receive("VOLT 1;:CURR 1;:OUTP ON", clock.nanos());
    world.faults().throwAt(railglow.sim.fault.FaultKind.IGNORES_OFF, clock.nanos());

    List<EmergencyOff.Result> results =
        new EmergencyOff(
                this::link, List.of(Descriptors.simulated()), 3_000_000_000L, clock, clock::advance)
            .drive();

    assertFalse(results.get(0).proven());
    assertTrue(results.get(0).sentence().contains("NOT proven off"), results.toString());
  }
}

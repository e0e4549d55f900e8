package railglow.supply;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import railglow.link.BytePort;
import railglow.link.CannotOpenException;
import railglow.link.LineEnd;
import railglow.link.MemoryPort;
import railglow.link.PortLink;
import railglow.link.Transcript;
import railglow.time.InventedClock;

/** Who is there, asked in invented time of instruments that want to be talked to in odd ways. */
class SupplyGreetingTest {
  private static final String IDENTITY = "Nobody,PS-1,0007,1.2";
  private static final long REPLY_NANOS = 5_000_000;
  private static final SupplyAddress SERIAL = SupplyAddress.parse("serial:/dev/ttyX");
  private static final SupplyAddress NETWORK = SupplyAddress.parse("tcp://192.0.2.7:5025");

  private final InventedClock clock = new InventedClock(1_000_000_000);
  private final List<String> messages = new ArrayList<>();

  /** An instrument on a line: right only at its own baud rate, with its own line ends. */
  private SupplyGreeting.Links instrument(
      int baud, String end, boolean echo, String answer, BytePort.Traits traits) {
    return (way, settings, told) -> {
      StringBuilder line = new StringBuilder();
      MemoryPort port =
          new MemoryPort(
              clock,
              (text, wire) -> {
                if (baud > 0 && way.line().baud() != baud) {
                  wire.deliver("\u00f8\u0000\u00e6", REPLY_NANOS);
                  return;
                }
                if (echo) {
                  wire.deliver(text, 0);
                }
                line.append(text);
                int at = line.indexOf(end);
                while (at >= 0) {
                  String message = line.substring(0, at).strip();
                  line.delete(0, at + end.length());
                  messages.add(message);
                  if (message.equals("*IDN?")) {
                    wire.deliver(answer + (answer.isEmpty() ? "" : end), REPLY_NANOS);
                  }
                  at = line.indexOf(end);
                }
              },
              traits);
      return new PortLink(port, settings, clock, told);
    };
  }

  private static final BytePort.Traits LINE = new BytePort.Traits(false, false, false, 0);
  private static final BytePort.Traits CONNECTION = new BytePort.Traits(true, false, false, 0);

  private SupplyGreeting.Outcome ask(
      SupplyGreeting.Links links, SupplyAddress address, List<SupplyDescriptor> known)
      throws CannotOpenException {
    return new SupplyGreeting(links, known, Transcript.NONE).ask(TalkingWay.all(address, known));
  }

  @Test
  void anInstrumentOnTheNetworkIsKnownAtTheFirstQuestionAndGetsNothingButQuestions()
      throws Exception {
    SupplyGreeting.Outcome found =
        ask(instrument(0, "\n", false, IDENTITY, CONNECTION), NETWORK, List.of());

    assertEquals(Optional.of(IDENTITY), found.identity());
    assertEquals(List.of(), found.failed());
    assertEquals(List.of("*IDN?"), messages);
  }

  @Test
  void aSerialLineIsTriedAtEveryUsualRateUntilWordsCome() throws Exception {
    SupplyGreeting.Outcome found =
        ask(instrument(19200, "\n", false, IDENTITY, LINE), SERIAL, List.of());

    assertEquals(Optional.of(IDENTITY), found.identity());
    assertEquals(19200, found.way().line().baud());
    assertEquals(9600, found.failed().get(0).way().line().baud());
    assertTrue(messages.stream().allMatch("*IDN?"::equals), messages.toString());
  }

  @Test
  void carriageReturnsAndEchoAreFoundOut() throws Exception {
    SupplyGreeting.Outcome found =
        ask(instrument(9600, "\r", true, IDENTITY, LINE), SERIAL, List.of());

    assertEquals(Optional.of(IDENTITY), found.identity());
    assertEquals(LineEnd.CR, found.way().link().sendEnd());
    assertTrue(found.way().link().echo());
    assertEquals("messages end with CR, echo", found.way().framing());
  }

  @Test
  void aRateInTheAddressIsTheOnlyOneTriedAndWhatCameThereIsCounted() throws Exception {
    SupplyGreeting.Outcome found =
        ask(
            instrument(19200, "\n", false, IDENTITY, LINE),
            SupplyAddress.parse("serial:/dev/ttyX?baud=2400"),
            List.of());

    assertEquals(Optional.empty(), found.identity());
    assertTrue(found.failed().stream().allMatch(a -> a.way().line().baud() == 2400));
    assertTrue(found.nearest().orElseThrow().heard() > 0, "the garbage of the wrong rate");
  }

  @Test
  void silenceIsToldFromGarbage() throws Exception {
    SupplyGreeting.Outcome found = ask(instrument(0, "\n", false, "", LINE), SERIAL, List.of());

    assertEquals(Optional.empty(), found.identity());
    assertEquals(0, found.nearest().orElseThrow().heard());
  }

  @Test
  void whatIsNoIdentityIsNotBelievedUnlessADescriptorKnowsIt() throws Exception {
    SupplyGreeting.Links odd = instrument(0, "\n", false, "SUPPLY 7 V1.0", CONNECTION);
    assertEquals(Optional.empty(), ask(odd, NETWORK, List.of()).identity());

    SupplyDescriptor knows = Descriptors.simulated();
    SupplyGreeting.Links known =
        instrument(0, "\n", false, "Railglow,SimulatedSupply,short", CONNECTION);
    assertEquals(Optional.empty(), ask(known, NETWORK, List.of()).identity());
    assertEquals(
        Optional.of("Railglow,SimulatedSupply,short"),
        ask(known, NETWORK, List.of(knows)).identity());
  }

  @Test
  void anAddressThatCannotBeOpenedEndsTheAskingAtOnce() {
    List<TalkingWay> asked = new ArrayList<>();
    SupplyGreeting.Links closed =
        (way, settings, told) -> {
          asked.add(way);
          MemoryPort port = new MemoryPort(clock, (text, wire) -> {});
          port.refuseToOpen(
              new CannotOpenException(CannotOpenException.Reason.REFUSED, "refused", null));
          return new PortLink(port, settings, clock, told);
        };

    assertThrows(CannotOpenException.class, () -> ask(closed, NETWORK, List.of()));
    assertEquals(1, asked.size());
  }

  @Test
  void theWaysOfKnownSuppliesComeFirstAndNoneTwice() {
    List<TalkingWay> ways = TalkingWay.all(SERIAL, List.of(Descriptors.simulated()));

    assertEquals(ways.size(), ways.stream().distinct().count());
    assertEquals(9600, ways.get(0).line().baud());
    assertTrue(ways.stream().anyMatch(way -> way.line().baud() == 115200));
    assertFalse(
        TalkingWay.all(NETWORK, List.of()).stream()
            .anyMatch(way -> way.link().replyEnd() == LineEnd.NONE),
        "a socket keeps no message ends");
    assertTrue(
        TalkingWay.all(SupplyAddress.parse("usbtmc:/dev/usbtmc0"), List.of()).stream()
            .anyMatch(way -> way.link().replyEnd() == LineEnd.NONE));
  }

  @Test
  void theDescriptorOfAModelComesBeforeThoseOfFamiliesWhichFitEquallyWell() {
    SupplyDescriptor model = Descriptors.simulated();
    SupplyDescriptor first = Descriptors.read("supply-scpi-regulation-in-operation.yaml");
    SupplyDescriptor second = Descriptors.read("supply-scpi-regulation-in-questionable.yaml");
    List<SupplyDescriptor> all = List.of(first, model, second);

    assertEquals(
        List.of(model), DescriptorMatch.equallyGood("Railglow,SimulatedSupply,1,1.0", all));
    assertEquals(List.of(first, second), DescriptorMatch.equallyGood(IDENTITY, all));
    assertEquals(List.of(), DescriptorMatch.equallyGood("nothing", all));
    assertTrue(DescriptorMatch.isGeneric(first));
    assertFalse(DescriptorMatch.isGeneric(model));
  }
}

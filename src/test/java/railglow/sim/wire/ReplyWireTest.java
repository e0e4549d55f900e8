package railglow.sim.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import railglow.sim.fault.FaultSpec;
import railglow.sim.fault.FaultSwitches;

class ReplyWireTest {
  private static List<Transmission> answers(String fault, String... answers) {
    List<FaultSpec> specs = fault.isEmpty() ? List.of() : List.of(FaultSpec.parse(fault));
    ReplyWire wire = new ReplyWire(new FaultSwitches(0, specs), WireHabits.plain(0.002));
    List<Transmission> last = List.of();
    for (String answer : answers) {
      last = wire.transmit("MEAS:VOLT?", answer, 1);
    }
    return last;
  }

  private static String text(List<Transmission> transmissions) {
    StringBuilder text = new StringBuilder();
    for (Transmission one : transmissions) {
      text.append(new String(one.bytes(), StandardCharsets.ISO_8859_1));
    }
    return text.toString();
  }

  @Test
  void aSoundWireSendsTheAnswerAfterTheReplyTime() {
    List<Transmission> sent = answers("", "1.0");
    assertEquals("1.0\n", text(sent));
    assertEquals(0.002, sent.get(0).pauseSeconds());
  }

  @Test
  void everyFaultOfTheWireDoesWhatItSays() {
    assertEquals("", text(answers("no-reply", "1.0")));
    assertEquals("", text(answers("previous-reply", "1.0")));
    assertEquals("1.0\n", text(answers("previous-reply", "1.0", "2.0")));
    assertEquals("1.00", text(answers("truncated-reply", "1.00000")));
    assertEquals("MEAS:VOLT?\n1.0\n", text(answers("echo", "1.0")));
    assertEquals(0.802, answers("late-reply=800ms", "1.0").get(0).pauseSeconds(), 1e-12);
    List<Transmission> bytes = answers("byte-at-a-time=5ms", "1.0");
    assertEquals("1.0\n", text(bytes));
    assertEquals(4, bytes.size());
    assertEquals(0.005, bytes.get(1).pauseSeconds());
    assertEquals((byte) 0xFF, answers("garbage-reply", "1.0").get(0).bytes()[0]);
  }
}

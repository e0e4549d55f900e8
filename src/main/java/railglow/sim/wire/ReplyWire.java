package railglow.sim.wire;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import railglow.sim.fault.FaultKind;
import railglow.sim.fault.FaultSpec;
import railglow.sim.fault.FaultSwitches;

/**
 * How an answer gets on the wire of one connection, with the faults of the wire. Deterministic. Not
 * thread-safe.
 */
public final class ReplyWire {
  private static final byte[] GARBAGE = {
    (byte) 0xFF, 0x00, '#', (byte) 0xC3, '?', ',', ';', '7', (byte) 0x80, '"', '\n'
  };
  private final FaultSwitches faults;
  private final WireHabits habits;
  private String heldBack;

  public ReplyWire(FaultSwitches faults, WireHabits habits) {
    this.faults = faults;
    this.habits = habits;
  }

  /**
   * @param line as it was received
   * @param answer null when nothing was asked
   */
  public List<Transmission> transmit(String line, String answer, long nowNanos) {
    List<Transmission> out = new ArrayList<>();
    if (habits.echo() || faults.isActive(FaultKind.ECHO, nowNanos)) {
      spell(out, 0, habits.secondsPerByte(), bytes(line + habits.replyEnd()));
    }
    String sent = answer;
    if (answer != null && faults.isActive(FaultKind.PREVIOUS_REPLY, nowNanos)) {
      sent = heldBack;
      heldBack = answer;
    }
    if (sent == null || faults.isActive(FaultKind.NO_REPLY, nowNanos)) {
      return out;
    }
    double late = faults.active(FaultKind.LATE_REPLY, nowNanos).map(FaultSpec::value).orElse(0.0);
    byte[] bytes = bytes(sent + habits.replyEnd());
    if (faults.isActive(FaultKind.GARBAGE_REPLY, nowNanos)) {
      bytes = GARBAGE.clone();
    } else if (faults.isActive(FaultKind.TRUNCATED_REPLY, nowNanos)) {
      bytes = Arrays.copyOf(bytes, bytes.length / 2);
    }
    double pause = habits.replySeconds() + late;
    double between =
        faults
            .active(FaultKind.BYTE_AT_A_TIME, nowNanos)
            .map(FaultSpec::value)
            .orElse(habits.secondsPerByte());
    spell(out, pause, between, bytes);
    return out;
  }

  /** All at once, or byte by byte with a time between them. */
  private static void spell(List<Transmission> out, double pause, double between, byte[] bytes) {
    if (between <= 0) {
      out.add(new Transmission(pause, bytes));
      return;
    }
    double wait = pause;
    for (byte one : bytes) {
      out.add(new Transmission(wait, new byte[] {one}));
      wait = between;
    }
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }
}

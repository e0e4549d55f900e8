package railglow.sim;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import railglow.sim.fault.FaultKind;
import railglow.sim.fault.FaultSpec;
import railglow.sim.picture.CameraSettings;
import railglow.sim.truth.TruthLog;
import railglow.time.InventedClock;

/** Each fault switch does to the bench what it says. */
class BenchFaultsTest {
  private static final long SECOND = 1_000_000_000L;

  /** HX-12 at 1 V from 1 s on, with a fault from 2 s on. */
  private static BenchWorld world(String scenario, double limitAmperes, String fault) {
    BenchWorld world =
        new BenchWorld(
            BenchScenarios.named(scenario)
                .orElseThrow()
                .withFaults(List.of(FaultSpec.parse(fault))),
            0,
            new TruthLog());
    world.receive("CURR " + limitAmperes + ";VOLT 1;OUTP ON", SECOND);
    return world;
  }

  private static double[] measure(BenchWorld world, double seconds) {
    long now = Math.round(seconds * SECOND);
    String[] reply = world.receive("MEAS:VOLT?;:MEAS:CURR?", now).split(";");
    return new double[] {Double.parseDouble(reply[0]), Double.parseDouble(reply[1])};
  }

  @Test
  void runawayDrawsWhatTheLimitAllows() {
    BenchWorld world = world("hx12", 1.0, "runaway=0.5ohm@2s");
    assertEquals(0.1445, measure(world, 1.9)[1], 0.002);
    assertEquals(1.0, measure(world, 2.1)[1], 0.002);
    assertEquals("1024", world.receive("STAT:OPER:COND?", 2_200_000_000L));
  }

  @Test
  void aHealthyBoardCanRunAwayToo() {
    BenchWorld world = world("healthy", 3.0, "runaway=2ohm@on+1s");
    assertEquals(0.022, measure(world, 1.9)[1], 0.002);
    assertTrue(measure(world, 2.1)[1] > 0.4);
  }

  @Test
  void itFallsIntoConstantCurrentUnasked() {
    BenchWorld world = world("hx12", 1.0, "falls-into-cc@2s");
    assertEquals("256", world.receive("STAT:OPER:COND?", 1_900_000_000L));
    assertEquals(0.6 * 0.1445, measure(world, 2.1)[1], 0.002);
    assertEquals("1024", world.receive("STAT:OPER:COND?", 2_200_000_000L));
  }

  @Test
  void itLeavesConstantCurrentUnasked() {
    BenchWorld world = world("dead-short", 1.0, "leaves-cc@2s");
    assertEquals("1024", world.receive("STAT:OPER:COND?", 1_900_000_000L));
    world.advance(2_100_000_000L);
    assertEquals("256", world.receive("STAT:OPER:COND?", 2_200_000_000L));
    assertEquals(1.0, measure(world, 2.3)[0], 0.01);
  }

  @Test
  void currentFlowsWhileOff() {
    BenchWorld world = world("hx12", 1.0, "current-while-off=80mA@2s");
    world.receive("OUTP OFF", 3 * SECOND);
    double[] reading = measure(world, 3.2);
    assertEquals("0", world.receive("OUTP?", 3_300_000_000L));
    assertEquals(0.078, reading[1], 0.005);
    assertEquals(0.078 * 6.8, reading[0], 0.06);
  }

  @Test
  void theVoltageStandsAboveTheSetOne() {
    BenchWorld world = world("hx12", 1.0, "voltage-over-set=400mV@2s");
    assertEquals(1.0, measure(world, 1.9)[0], 0.005);
    assertEquals(1.4, measure(world, 2.1)[0], 0.005);
    assertEquals("1.000000E+00", world.receive("VOLT?", 2_200_000_000L));
  }

  @Test
  void aBigRailCapacitorDischargesSlowly() {
    BenchWorld slow = world("hx12", 5.0, "slow-discharge@0s");
    slow.receive("OUTP OFF", 5 * SECOND);
    double atOff = measure(slow, 5.01)[0];
    // tau = 0.5 F * 6.8 ohm = 3.4 s.
    assertEquals(atOff * Math.exp(-1), measure(slow, 5.01 + 3.4)[0], 0.05);
    BenchWorld fast = world("hx12", 5.0, "echo");
    fast.receive("OUTP OFF", 5 * SECOND);
    assertEquals(0, measure(fast, 5.05)[0], 0.003);
  }

  @Test
  void offIsIgnoredButBelievedDone() {
    BenchWorld world = world("hx12", 1.0, "ignores-off@2s");
    world.receive("OUTP OFF", 3 * SECOND);
    assertEquals("0", world.receive("OUTP?", 3_100_000_000L));
    assertEquals(0.1445, measure(world, 3.2)[1], 0.002);
    assertTrue(world.truth().outputIsOn());
  }

  @Test
  void tripsSwitchOffAndStay() {
    BenchWorld over = world("hx12", 1.0, "overvoltage-trip@2s");
    assertEquals(0, measure(over, 2.2)[1], 0.002);
    assertEquals("1", over.receive("STAT:QUES:COND?", 2_300_000_000L));
    BenchWorld current = world("hx12", 1.0, "overcurrent-trip@2s");
    assertEquals(0, measure(current, 2.2)[1], 0.002);
    assertEquals("2", current.receive("STAT:QUES:COND?", 2_300_000_000L));
    assertFalse(current.truth().outputIsOn());
  }

  @Test
  void theErrorQueueFills() {
    BenchWorld world = world("hx12", 1.0, "error-queue-fills@2s");
    assertEquals("0", world.receive("SYST:ERR:COUN?", 1_900_000_000L));
    assertNotEquals("0", world.receive("SYST:ERR:COUN?", 2_100_000_000L));
    assertTrue(world.receive("SYST:ERR?", 2_200_000_000L).startsWith("-240,"));
  }

  @Test
  void aLostContactLooksOpen() {
    BenchWorld world = world("hx12", 1.0, "contact-lost@2s");
    assertEquals(0, measure(world, 2.1)[1], 0.002);
    assertEquals(1, measure(world, 2.1)[0], 0.003);
  }

  @Test
  void frozenFramesRepeatTheImageUnderNewNumbers() {
    List<byte[]> packets = packets("frozen-frames@1s", 40);
    byte[] last = packets.get(packets.size() - 1);
    byte[] before = packets.get(packets.size() - 2);
    assertNotEquals(counter(last), counter(before));
    assertArrayEquals(image(last), image(before));
    assertFalse(Arrays.equals(image(packets.get(5)), image(packets.get(6))));
  }

  @Test
  void aStoppedCameraSendsNothingMore() {
    List<byte[]> packets = packets("camera-stops@1s", 60);
    assertTrue(packets.size() >= 23 && packets.size() <= 26, packets.size() + " packets");
  }

  @Test
  void aFloodingCameraSendsMoreThanItsRate() {
    List<byte[]> packets = packets("camera-floods@1s", 50);
    assertTrue(packets.size() > 150, packets.size() + " packets");
    for (int i = 1; i < packets.size(); i++) {
      assertTrue(counter(packets.get(i)) > counter(packets.get(i - 1)));
    }
  }

  @Test
  void aPushedCameraShiftsThePicture() {
    // Without noise of its own: the scene moves, what is the camera's stays.
    List<byte[]> still = packets("echo", 40, CameraSettings.ideal(256, 192, 25));
    List<byte[]> moved = packets("camera-moved=4px@1s", 40, CameraSettings.ideal(256, 192, 25));
    ByteBuffer a = ByteBuffer.wrap(still.get(39)).order(ByteOrder.LITTLE_ENDIAN);
    ByteBuffer b = ByteBuffer.wrap(moved.get(39)).order(ByteOrder.LITTLE_ENDIAN);
    int different = 0;
    for (int row = 50; row < 150; row++) {
      for (int column = 50; column < 200; column++) {
        int from = 16 + 2 * (row * 256 + column);
        int to = 16 + 2 * ((row + 2) * 256 + column + 4);
        assertEquals(a.getShort(from), b.getShort(to));
        different += a.getShort(from) == b.getShort(from) ? 0 : 1;
      }
    }
    assertTrue(different > 500, different + " pixels show another place");
  }

  @Test
  void faultsCanBeThrownAndClearedAtAnyTime() {
    BenchWorld world = world("hx12", 1.0, "echo");
    world.faults().throwAt(FaultKind.RUNAWAY, 2 * SECOND);
    assertTrue(measure(world, 2.1)[1] > 0.9);
    world.faults().clear(FaultKind.RUNAWAY);
    assertEquals(0.1445, measure(world, 2.3)[1], 0.002);
  }

  private static List<byte[]> packets(String fault, int intervals) {
    return packets(fault, intervals, BenchScenarios.hx12().camera());
  }

  private static List<byte[]> packets(String fault, int intervals, CameraSettings camera) {
    InventedClock clock = new InventedClock(0);
    InventedBench bench =
        new InventedBench(
            BenchScenarios.hx12().withCamera(camera).withFaults(List.of(FaultSpec.parse(fault))),
            clock);
    List<byte[]> packets = new ArrayList<>();
    for (int i = 0; i <= intervals; i++) {
      for (byte[] one = bench.takePacket(); one != null; one = bench.takePacket()) {
        packets.add(one);
      }
      clock.advance(40_000_000);
    }
    return packets;
  }

  private static int counter(byte[] packet) {
    return ByteBuffer.wrap(packet).order(ByteOrder.LITTLE_ENDIAN).getInt(0);
  }

  private static byte[] image(byte[] packet) {
    return Arrays.copyOfRange(packet, 16, packet.length);
  }
}

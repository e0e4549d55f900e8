package railglow.sim;

import java.util.ArrayDeque;
import java.util.Deque;
import railglow.link.MemoryPeer;
import railglow.sim.fault.FaultKind;
import railglow.sim.fault.FaultSwitches;
import railglow.sim.truth.TruthLog;
import railglow.sim.wire.LinePeer;
import railglow.time.InventedClock;

/**
 * The same bench in memory and invented time: the supply answers on a memory port, the camera's
 * packets are asked for. Everything happens on the calling thread. Same scenario and same calls
 * give the same bytes. Not thread-safe.
 */
public final class InventedBench {
  private final InventedClock clock;
  private final BenchWorld world;
  private final CameraFeed feed;
  private final Deque<byte[]> packets = new ArrayDeque<>();

  public InventedBench(BenchScenario scenario, InventedClock clock) {
    this.clock = clock;
    world = new BenchWorld(scenario, clock.nanos(), new TruthLog());
    feed = new CameraFeed(world, packets::add, () -> {});
  }

  /** A new connection to the supply; a memory port needs one of its own. */
  public MemoryPeer connect() {
    return new LinePeer(
        world::receive,
        world.faults(),
        world.scenario().supply().wire(),
        now -> world.faults().takeOnce(FaultKind.DROP_CONNECTION, now));
  }

  /** When the next packet arrives, if the camera sends one. */
  public long nextPacketNanos() {
    return packets.isEmpty() ? feed.dueNanos() : clock.nanos();
  }

  /**
   * The next packet of the camera's stream that has arrived by now; null when there is none yet.
   * The bytes are those of the served camera.
   */
  public byte[] takePacket() {
    while (packets.isEmpty() && feed.dueNanos() - clock.nanos() <= 0) {
      feed.step(feed.dueNanos());
    }
    return packets.pollFirst();
  }

  public BenchScenario scenario() {
    return world.scenario();
  }

  public BenchWorld world() {
    return world;
  }

  public FaultSwitches faults() {
    return world.faults();
  }

  public TruthLog truth() {
    return world.truth();
  }
}

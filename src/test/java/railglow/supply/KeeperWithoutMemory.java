package railglow.supply;

import railglow.link.PortLink;
import railglow.link.TcpPort;
import railglow.link.Transcript;
import railglow.observed.Edge;
import railglow.observed.OutputState;
import railglow.observed.SupplyReading;
import railglow.safety.OutputPermit;
import railglow.safety.PermitSlot;
import railglow.safety.StopLatch;
import railglow.time.Pause;
import railglow.time.SystemClock;

/**
 * A process whose keeper has the output on when every byte of its memory goes, on the keeper's own
 * thread: not even what a thread has set aside for itself is left. Ends with 0 when the keeper then
 * stopped the run.
 */
final class KeeperWithoutMemory {
  private static final int[] PIECES = {1 << 16, 1 << 10, 1 << 4, 1};
  private static final int TIMES_TAKEN = 3;
  private static final int STEPS_WITHOUT = 3;
  private static final SystemClock CLOCK = SystemClock.INSTANCE;

  /** The smallest object there is that can hold another. */
  private record Crumb(Crumb before) {}

  private static Object[] pieces;
  private static Crumb crumbs;

  private KeeperWithoutMemory() {}

  /**
   * @param args the port of the simulated supply on this machine
   */
  public static void main(String[] args) throws Exception {
    SupplyDescriptor descriptor = Descriptors.withoutTimer(Descriptors.simulated());
    TcpPort port = new TcpPort("127.0.0.1", Integer.parseInt(args[0]), false, CLOCK);
    PortLink link = new PortLink(port, descriptor.wire().link(), CLOCK, Transcript.NONE);
    StopLatch latch = new StopLatch();
    PermitSlot permits = new PermitSlot();
    SupplyKeeper keeper =
        new SupplyKeeper(
            ScpiSupply.connect(link, descriptor, 1),
            KeeperBench.PLAN,
            KeeperBench.ENVELOPE,
            permits,
            latch,
            new Nobody(),
            CLOCK);
    while (!keeper.isReady()) {
      step(keeper);
    }
    permits.post(
        new OutputPermit(0, true, KeeperBench.LEVEL_VOLTS, CLOCK.nanos() + 60_000_000_000L));
    while (keeper.outputState() != OutputState.ON) {
      step(keeper);
    }
    // what others let go of meanwhile is taken as well
    for (int i = 0; i < TIMES_TAKEN; i++) {
      takeEverything();
    }
    for (int i = 0; i < STEPS_WITHOUT; i++) {
      keeper.step(CLOCK.nanos());
    }
    pieces = null;
    crumbs = null;
    // ending takes memory too
    System.exit(latch.isSet() ? 0 : 2);
  }

  private static void step(SupplyKeeper keeper) {
    long next = keeper.step(CLOCK.nanos());
    Pause.nanos(Math.min(10_000_000L, Math.max(0, next - CLOCK.nanos())));
  }

  private static void takeEverything() {
    for (int length : PIECES) {
      takeAll(length);
    }
    try {
      while (true) {
        crumbs = new Crumb(crumbs);
      }
    } catch (OutOfMemoryError e) {
      // that was the last one
    }
  }

  private static void takeAll(int length) {
    try {
      while (true) {
        Object[] more = new Object[length];
        more[0] = pieces;
        pieces = more;
      }
    } catch (OutOfMemoryError e) {
      // what is left is smaller
    }
  }

  private static final class Nobody implements SupplyListener {
    @Override
    public void onReading(SupplyReading reading) {}

    @Override
    public void onEdge(Edge edge) {}

    @Override
    public void onOutputState(OutputState state, long nowNanos) {}
  }
}

package railglow.supply;

import railglow.link.MemoryPort;
import railglow.link.PortLink;
import railglow.link.Transcript;
import railglow.sim.BenchScenarios;
import railglow.sim.BenchWorld;
import railglow.sim.truth.TruthLog;

/** The driver against the simulated supply, everything in one message. */
class ScpiSupplyTest extends SupplyConformance {
  private final BenchWorld world =
      new BenchWorld(BenchScenarios.hx12(), clock.nanos(), new TruthLog());
  private boolean silent;

  /** What the driver is told of the supply. */
  SupplyDescriptor descriptor() {
    return Descriptors.simulated();
  }

  @Override
  Supply supply() throws SupplyException {
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
                String reply = world.receive(line.toString(), wire.nowNanos());
                line.setLength(0);
                if (reply != null && !silent) {
                  wire.deliver(reply + "\n", 2_000_000);
                }
              }
            });
    return ScpiSupply.connect(
        new PortLink(port, descriptor().wire().link(), clock, Transcript.NONE), descriptor(), 1);
  }

  @Override
  void silence() {
    silent = true;
  }

  @Override
  void speakAgain() {
    silent = false;
  }

  @Override
  boolean isTrulyOn() {
    world.advance(clock.nanos());
    return world.supply().output(1).isReallyOn();
  }
}

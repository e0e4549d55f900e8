package railglow.cli;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import railglow.journal.RunFolder;
import railglow.link.PortLink;
import railglow.link.TranscriptFile;
import railglow.safety.Protection;
import railglow.supply.LineManners;
import railglow.supply.ScpiSupply;
import railglow.supply.Supply;
import railglow.supply.SupplyAddress;
import railglow.supply.SupplyDescriptor;
import railglow.supply.SupplyLock;
import railglow.time.MonotonicClock;
import railglow.time.StepRunner;
import railglow.time.WallStamp;

/** A supply that was reached and knows its own name, with all that protects its bench. */
final class OpenedSupply implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(OpenedSupply.class);
  private final ScpiSupply supply;
  private final String identity;
  private final List<String> protections;
  private final TranscriptFile transcript;
  private final StepRunner writer;
  private final SupplyLock lock;

  private OpenedSupply(
      ScpiSupply supply,
      String identity,
      List<String> protections,
      TranscriptFile transcript,
      StepRunner writer,
      SupplyLock lock) {
    this.supply = supply;
    this.identity = identity;
    this.protections = List.copyOf(protections);
    this.transcript = transcript;
    this.writer = writer;
    this.lock = lock;
  }

  /**
   * @throws UserMistake with one sentence when there is no such supply or it is another one
   */
  static OpenedSupply open(RunSetup setup, RunFolder folder, MonotonicClock clock)
      throws UserMistake {
    SupplyDescriptor descriptor = setup.supply();
    TranscriptFile transcript = transcript(folder, clock);
    StepRunner writer =
        new StepRunner(
                "transcript",
                transcript,
                clock,
                (name, failure) -> LOG.error("the transcript failed", failure))
            .start();
    SupplyLock lock = null;
    try {
      SupplyAddress address = SupplyAddress.parse(setup.bench().supplyAddress());
      lock = SupplyLock.take(address, WallStamp.now(clock).instant());
      PortLink link =
          new PortLink(
              address.port(descriptor.line().orElse(LineManners.USUAL), clock),
              descriptor.wire().link(),
              clock,
              transcript);
      ScpiSupply supply = ScpiSupply.connect(link, descriptor, setup.bench().supplyChannel());
      return new OpenedSupply(
          supply, supply.identify(), protections(setup), transcript, writer, lock);
    } catch (IOException | IllegalArgumentException e) {
      end(writer, transcript, lock);
      throw new UserMistake(e.getMessage());
    }
  }

  Supply supply() {
    return supply;
  }

  String identity() {
    return identity;
  }

  /** What protects this bench, in order. */
  List<String> protections() {
    return protections;
  }

  @Override
  public void close() {
    supply.close();
    end(writer, transcript, lock);
  }

  private static TranscriptFile transcript(RunFolder folder, MonotonicClock clock)
      throws UserMistake {
    try {
      return new TranscriptFile(folder.transcript(), clock.nanos());
    } catch (IOException e) {
      throw new UserMistake("the transcript can't be begun: " + e.getMessage());
    }
  }

  private static void end(StepRunner writer, TranscriptFile transcript, SupplyLock lock) {
    writer.close();
    try {
      transcript.close();
      if (lock != null) {
        lock.close();
      }
    } catch (IOException e) {
      LOG.warn("transcript or lock could not be ended: {}", e.toString());
    }
  }

  private static List<String> protections(RunSetup setup) {
    List<String> list = new ArrayList<>();
    if (!setup.supply().missing().contains(Protection.OVER_CURRENT_PROTECTION)) {
      list.add("the supply's own over-current protection");
    }
    if (!setup.supply().missing().contains(Protection.OVER_VOLTAGE_PROTECTION)) {
      list.add("the supply's own over-voltage protection");
    }
    list.add("this program's keeper");
    if (setup.bench().companion()) {
      list.add("a companion process");
    }
    if (!setup.supply().missing().contains(Protection.SUPPLY_WATCHDOG)) {
      list.add("the supply's own watchdog");
    }
    return list;
  }
}

package railglow.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import railglow.config.Bench;
import railglow.link.PortLink;
import railglow.link.TranscriptFile;
import railglow.supply.BenchProtection;
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
  static OpenedSupply open(
      Bench bench, SupplyDescriptor descriptor, Path transcriptFile, MonotonicClock clock)
      throws UserMistake {
    return open(SupplyPlace.of(bench), descriptor, transcriptFile, clock);
  }

  /** As {@link #open}, for a supply without a bench file. */
  static OpenedSupply open(
      SupplyPlace place, SupplyDescriptor descriptor, Path transcriptFile, MonotonicClock clock)
      throws UserMistake {
    return open(place, descriptor, transcriptFile, clock, ScpiSupply::connect);
  }

  /** As {@link #open}, for a supply that somebody else controls: it is only asked. */
  static OpenedSupply watch(
      Bench bench, SupplyDescriptor descriptor, Path transcriptFile, MonotonicClock clock)
      throws UserMistake {
    return open(SupplyPlace.of(bench), descriptor, transcriptFile, clock, ScpiSupply::watch);
  }

  private interface Opener {
    ScpiSupply open(PortLink link, SupplyDescriptor descriptor, int channel) throws IOException;
  }

  private static OpenedSupply open(
      SupplyPlace place,
      SupplyDescriptor descriptor,
      Path transcriptFile,
      MonotonicClock clock,
      Opener opener)
      throws UserMistake {
    TranscriptFile transcript = transcript(transcriptFile, clock);
    StepRunner writer =
        new StepRunner(
                "transcript",
                transcript,
                clock,
                (name, failure) -> LOG.error("the transcript failed", failure))
            .start();
    SupplyLock lock = null;
    try {
      SupplyAddress address = SupplyAddress.parse(place.address());
      lock = SupplyLock.take(address, WallStamp.now(clock).instant());
      PortLink link =
          new PortLink(
              address.port(descriptor.line().orElse(LineManners.USUAL), clock),
              descriptor.wire().link(),
              clock,
              transcript);
      ScpiSupply supply = opener.open(link, descriptor, place.channel());
      return new OpenedSupply(
          supply,
          supply.identify(),
          BenchProtection.inOrder(descriptor, place.companion()),
          transcript,
          writer,
          lock);
    } catch (IOException | IllegalArgumentException e) {
      end(writer, transcript, lock);
      throw new UserMistake(e.getMessage());
    }
  }

  /** Of a supply that is only read. */
  ScpiSupply watched() {
    return supply;
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

  private static TranscriptFile transcript(Path file, MonotonicClock clock) throws UserMistake {
    try {
      return new TranscriptFile(file, clock.nanos());
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
}

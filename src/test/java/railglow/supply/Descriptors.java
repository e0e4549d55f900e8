package railglow.supply;

import java.nio.file.Path;
import java.util.Optional;
import railglow.config.ConfigException;
import railglow.config.SupplyDescriptorFile;

/** Descriptors for tests: the simulated supply's own, whole or with something taken away. */
final class Descriptors {
  private static final SupplyDescriptor SIMULATED = read("supply-simulated.yaml");

  private Descriptors() {}

  static SupplyDescriptor simulated() {
    return SIMULATED;
  }

  static SupplyDescriptor read(String name) {
    try {
      return SupplyDescriptorFile.read(Path.of("instruments", name));
    } catch (ConfigException e) {
      throw new IllegalStateException(e);
    }
  }

  /** One command or query in each message. */
  static SupplyDescriptor withoutCompound(SupplyDescriptor d) {
    WireManners wire = d.wire();
    return with(
        d,
        new WireManners(wire.link(), wire.replyTimeoutNanos(), false, wire.readingIntervalNanos()),
        d.timer());
  }

  static SupplyDescriptor withoutTimer(SupplyDescriptor d) {
    return with(d, d.wire(), Optional.empty());
  }

  private static SupplyDescriptor with(
      SupplyDescriptor d, WireManners wire, Optional<OutputTimer> timer) {
    return new SupplyDescriptor(
        d.name(),
        d.identity(),
        wire,
        d.line(),
        d.channels(),
        d.commands(),
        d.status(),
        d.overVoltage(),
        d.overCurrent(),
        timer);
  }
}

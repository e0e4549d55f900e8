package railglow.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.util.Optional;
import railglow.run.pulsed.CompanionStarter;
import railglow.safety.StopLatch;
import railglow.supply.CompanionProcess;
import railglow.supply.LaunchedCompanion;
import railglow.supply.SupplyAddress;

/**
 * The companion of a bench, launched before anything is opened so that its own start does not hold
 * up the first pulse. It touches nothing until the run beats for it.
 */
final class OpenedCompanion implements AutoCloseable {
  private final Optional<LaunchedCompanion> launched;
  private final StopLatch latch;

  private OpenedCompanion(Optional<LaunchedCompanion> launched, StopLatch latch) {
    this.launched = launched;
    this.latch = latch;
  }

  /**
   * @throws UserMistake when the process can't be started
   */
  static OpenedCompanion launch(RunSetup setup, StopLatch latch) throws UserMistake {
    if (!setup.bench().companion()) {
      return new OpenedCompanion(Optional.empty(), latch);
    }
    try {
      LaunchedCompanion launched =
          CompanionProcess.launch(
              Main.class.getName(),
              SupplyAddress.parse(setup.bench().supplyAddress()),
              setup.bench().supplyChannel(),
              Files.readString(setup.bench().supplyDescriptor()));
      return new OpenedCompanion(Optional.of(launched), latch);
    } catch (IOException e) {
      throw new UserMistake(
          e.getMessage() + "; a bench file with 'companion: no' says it may be absent");
    }
  }

  /** Hands it to a run, once. */
  CompanionStarter starter() {
    return keeperLastStepNanos -> launched.map(l -> l.beatingFor(keeperLastStepNanos, latch));
  }

  /** Lets it go untouched when no run has taken it over. */
  @Override
  public void close() {
    launched.ifPresent(LaunchedCompanion::close);
  }
}

package railglow.run.pulsed;

import java.io.IOException;
import java.util.Optional;
import java.util.function.LongSupplier;
import railglow.supply.CompanionProcess;

/** Starts the companion process of a run. */
@FunctionalInterface
public interface CompanionStarter {
  /** For a bench whose owner accepts to be without. */
  CompanionStarter NONE = keeperLastStepNanos -> Optional.empty();

  /**
   * @param keeperLastStepNanos the keeper's heartbeat
   * @throws IOException with a sentence when it can't be started
   */
  Optional<CompanionProcess> start(LongSupplier keeperLastStepNanos) throws IOException;
}

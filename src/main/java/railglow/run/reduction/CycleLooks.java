package railglow.run.reduction;

import java.util.Optional;
import railglow.thermal.CodedPairs;
import railglow.thermal.DetectionSettings;
import railglow.thermal.Detector;
import railglow.thermal.Look;
import railglow.thermal.Plane;
import railglow.thermal.QuarterMeans;

/** Takes good cycles in their order and looks after each, or after those that matter. */
final class CycleLooks {
  private final DetectionSettings settings;
  private final Detector detector;
  private final boolean everyOne;
  private final CodedPairs pairs = new CodedPairs();
  private Look look;
  private boolean due;

  /**
   * @param everyOne false to leave out all looks but the first that calls a source and the last: a
   *     look depends on earlier ones only by their bounds, and by those only until one has called
   *     (decisions 0035 and 0088)
   */
  CycleLooks(DetectionSettings settings, int width, int height, boolean everyOne) {
    this.settings = settings;
    this.detector = new Detector(settings, width, height);
    this.everyOne = everyOne;
  }

  /**
   * Takes a cycle.
   *
   * @param inverted its pulses, in a coded run
   * @return a look, when one was made
   */
  Optional<Look> take(QuarterMeans means, boolean inverted) {
    Optional<QuarterMeans> unit =
        settings.coded() ? pairs.take(means, inverted) : Optional.of(means);
    unit.ifPresent(detector::addCycle);
    if (unit.isEmpty() || detector.cycles() < settings.minCycles()) {
      return Optional.empty();
    }
    boolean hasCalled = look != null && !look.sources().isEmpty();
    if (!everyOne && (hasCalled || detector.surelyCallsNothing())) {
      due = true;
      return Optional.empty();
    }
    look = detector.look();
    due = false;
    return Optional.of(look);
  }

  /** The look at all cycles taken; null when they are too few. */
  Look last() {
    if (due) {
      look = detector.look();
      due = false;
    }
    return look;
  }

  Plane trust() {
    return detector.trust();
  }

  /** How many cycles of the pulses the looks rest on. */
  int cyclesUsed() {
    return detector.cycles() * (settings.coded() ? 2 : 1);
  }
}

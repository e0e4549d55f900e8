package railglow.run.reduction;

import java.util.Optional;
import railglow.thermal.CodedPairs;
import railglow.thermal.DetectionSettings;
import railglow.thermal.Detector;
import railglow.thermal.Look;
import railglow.thermal.Plane;
import railglow.thermal.QuarterMeans;

/**
 * Takes good cycles in their order and looks after each, or after those that matter. Not
 * thread-safe.
 */
final class CycleLooks {
  private final DetectionSettings settings;
  private final Detector detector;
  private final LooksMade made;
  private final CodedPairs pairs = new CodedPairs();
  private Look look;
  private int firstCall = Integer.MAX_VALUE;
  private boolean due;

  /** Whether cycles went by without their bound, and nothing had been called. */
  private boolean leftOut;

  CycleLooks(DetectionSettings settings, int width, int height, LooksMade made) {
    this.settings = settings;
    this.detector = new Detector(settings, width, height);
    this.made = made;
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
    due = true;
    if (mayMatter()) {
      look();
      return Optional.of(look);
    }
    return Optional.empty();
  }

  /** Whether the look after the newest cycle is to be made now. */
  private boolean mayMatter() {
    if (made == LooksMade.ALL) {
      return true;
    }
    if (firstCall < detector.cycles()) {
      return false;
    }
    if (made == LooksMade.NOW_AND_THEN && Integer.bitCount(detector.cycles()) > 1) {
      leftOut = true;
      return false;
    }
    return !detector.surelyCallsNothing();
  }

  private void look() {
    look = detector.look();
    due = false;
    if (!look.sources().isEmpty()) {
      firstCall = Math.min(firstCall, detector.cycles());
    }
  }

  /** The look at all cycles taken; null when they are too few. */
  Look last() {
    if (due) {
      look();
    }
    return look;
  }

  /**
   * Whether the last look calls something, none before it has, and some were left out: then it is
   * not the one that would have been made after all of them.
   */
  boolean lacksLooks() {
    return leftOut && firstCall >= detector.cycles() && !detector.surelyCallsNothing();
  }

  Plane trust() {
    return detector.trust();
  }

  /** How many cycles of the pulses the looks rest on. */
  int cyclesUsed() {
    return detector.cycles() * (settings.coded() ? 2 : 1);
  }
}

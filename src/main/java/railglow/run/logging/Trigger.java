package railglow.run.logging;

import java.util.ArrayDeque;
import java.util.Locale;
import java.util.Optional;

/**
 * Watches for a condition to become true. It fires once each time; then it must have been false for
 * a second before it fires again. Times never go back. Not thread-safe.
 */
final class Trigger {
  private static final long SECOND = 1_000_000_000L;

  /** So many values must lie in the second before one that is called a step. */
  private static final int LEAST_BEFORE = 3;

  private record Seen(long nanos, double value) {}

  private final Condition condition;
  private final ArrayDeque<Seen> before = new ArrayDeque<>();
  private boolean armed = true;
  private long falseSinceNanos = Long.MIN_VALUE;

  Trigger(Condition condition) {
    this.condition = condition;
  }

  Condition condition() {
    return condition;
  }

  /**
   * Takes the next value of what the condition watches.
   *
   * @return why it fires, as a sentence's part; empty when it does not
   */
  Optional<String> onValue(long nanos, double value) {
    if (!Double.isFinite(value)) {
      return Optional.empty();
    }
    String why =
        switch (condition.kind()) {
          case ABOVE -> value > condition.bound() ? "at " + condition.format(value) : "";
          case BELOW -> value < condition.bound() ? "at " + condition.format(value) : "";
          case STEP -> step(nanos, value);
        };
    if (why.isEmpty()) {
      if (!armed && falseSinceNanos == Long.MIN_VALUE) {
        falseSinceNanos = nanos;
      }
      if (!armed && nanos - falseSinceNanos >= SECOND) {
        armed = true;
      }
      return Optional.empty();
    }
    falseSinceNanos = Long.MIN_VALUE;
    if (!armed) {
      return Optional.empty();
    }
    armed = false;
    before.clear();
    return Optional.of(condition.text() + ": " + why);
  }

  private String step(long nanos, double value) {
    while (!before.isEmpty() && nanos - before.peek().nanos() > SECOND) {
      before.remove();
    }
    String why = "";
    if (before.size() >= LEAST_BEFORE) {
      double mean = before.stream().mapToDouble(Seen::value).average().orElseThrow();
      if (Math.abs(value - mean) >= condition.bound()) {
        why =
            String.format(
                Locale.ROOT, "from %s to %s", condition.format(mean), condition.format(value));
      }
    }
    before.add(new Seen(nanos, value));
    return why;
  }
}

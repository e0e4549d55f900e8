package railglow.sim.fault;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Which faults are active when. Thread-safe: switches may be thrown while the bench runs. */
public final class FaultSwitches {
  private final long startNanos;
  private final List<FaultSpec> specs = new ArrayList<>();
  private final Map<FaultKind, Set<FaultSpec>> done = new EnumMap<>(FaultKind.class);
  private long firstOnNanos;
  private boolean wasOn;

  public FaultSwitches(long startNanos, List<FaultSpec> specs) {
    this.startNanos = startNanos;
    this.specs.addAll(specs);
  }

  public synchronized void add(FaultSpec spec) {
    specs.add(spec);
  }

  /** Begins at a moment of the bench's clock and lasts. */
  public synchronized void throwAt(FaultKind kind, long nowNanos) {
    specs.add(FaultSpec.always(kind).from(Math.max(0, (nowNanos - startNanos) * 1e-9)));
  }

  public synchronized void clear(FaultKind kind) {
    specs.removeIf(spec -> spec.kind() == kind);
    done.remove(kind);
  }

  /** The output has gone on: times that count from there begin, the first time. */
  public synchronized void outputWentOn(long nowNanos) {
    if (!wasOn) {
      wasOn = true;
      firstOnNanos = nowNanos;
    }
  }

  public synchronized boolean isActive(FaultKind kind, long nowNanos) {
    return active(kind, nowNanos).isPresent();
  }

  /** The first active fault of this kind. */
  public synchronized Optional<FaultSpec> active(FaultKind kind, long nowNanos) {
    for (FaultSpec spec : specs) {
      if (spec.kind() == kind && holds(spec, nowNanos)) {
        return Optional.of(spec);
      }
    }
    return Optional.empty();
  }

  /** Whether a fault that happens once is due; true only the first time. */
  public synchronized boolean takeOnce(FaultKind kind, long nowNanos) {
    for (FaultSpec spec : specs) {
      if (spec.kind() == kind
          && holds(spec, nowNanos)
          && done.computeIfAbsent(kind, k -> new HashSet<>()).add(spec)) {
        return true;
      }
    }
    return false;
  }

  private boolean holds(FaultSpec spec, long nowNanos) {
    if (spec.afterOn() && !wasOn) {
      return false;
    }
    double seconds = (nowNanos - (spec.afterOn() ? firstOnNanos : startNanos)) * 1e-9;
    return seconds >= spec.startSeconds() && seconds < spec.endSeconds();
  }
}

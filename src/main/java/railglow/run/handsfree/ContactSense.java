package railglow.run.handsfree;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;

/**
 * Feels the contact of a probe from volts and amperes in time. Only what flows tells an open probe
 * from a rail of next to nothing: both may show no volts. All spans are by the readings' own times,
 * so late readings make it slower but not wrong. Not thread-safe.
 */
public final class ContactSense {
  /** So many losses within the memory make a contact a bouncing one. */
  private static final int MOST_LOSSES = 2;

  /** Fewer readings than this are no stretch, however long they took. */
  private static final int LEAST_READINGS = 3;

  /** A contact that has not settled by then is told to be a bad one. */
  private static final double PATIENCE_SECONDS = 2.5;

  private static final double MEMORY_SECONDS = 1.5;
  private static final double NANOS = 1e9;

  private record Sample(long nanos, boolean flows, double ohms, double amperes) {}

  private final ContactBounds bounds;
  private final Deque<Sample> memory = new ArrayDeque<>();
  private ContactState state = ContactState.IN_AIR;
  private long touchedNanos;
  private long openSinceNanos;
  private long steadyFromNanos;
  private double steadyOhms = Double.NaN;

  public ContactSense(ContactBounds bounds) {
    this.bounds = bounds;
  }

  /**
   * Takes the next reading of an output that is on.
   *
   * @param nanos its end; not before the last one's
   * @param volts as read, leads not taken off
   */
  public Contact take(long nanos, double volts, double amperes) {
    boolean flows = bounds.flows(amperes);
    double ohms = flows ? bounds.ohms(volts, amperes) : Double.POSITIVE_INFINITY;
    Sample sample = new Sample(nanos, flows, ohms, amperes);
    if (!state.isTouching()) {
      memory.clear();
      if (!flows) {
        state = ContactState.IN_AIR;
        return Contact.none(state, nanos);
      }
      state = ContactState.CONTACT_SETTLING;
      touchedNanos = nanos;
      steadyFromNanos = nanos;
    }
    boolean wasOpen = !memory.isEmpty() && !memory.peekLast().flows();
    memory.add(sample);
    while (memory.peekFirst().nanos() < nanos - span(MEMORY_SECONDS)) {
      memory.removeFirst();
    }
    if (flows) {
      judgeFlow(nanos, wasOpen);
    } else {
      judgeGap(nanos, wasOpen);
    }
    return state == ContactState.LIFTED ? Contact.none(state, nanos) : described(nanos);
  }

  public ContactState state() {
    return state;
  }

  private void judgeFlow(long nanos, boolean wasOpen) {
    if (wasOpen) {
      steadyFromNanos = nanos;
    }
    double[] seen = sorted(steadyFromNanos);
    double middle = seen[seen.length / 2];
    double reference = state == ContactState.STEADY ? steadyOhms : middle;
    double allowed = bounds.allowedOhms(reference, memory.peekLast().amperes());
    boolean out =
        state == ContactState.STEADY
            ? Math.abs(memory.peekLast().ohms() - reference) > allowed
            : seen[seen.length - 1] - middle > allowed || middle - seen[0] > allowed;
    if (out) {
      steadyFromNanos = nanos;
      if (state == ContactState.STEADY) {
        state = ContactState.BOUNCING;
      }
    } else if (nanos - steadyFromNanos >= span(bounds.steadySeconds())
        && seen.length >= LEAST_READINGS) {
      if (state != ContactState.STEADY) {
        steadyOhms = middle;
      }
      state = ContactState.STEADY;
      return;
    }
    boolean impatient = nanos - touchedNanos >= span(PATIENCE_SECONDS);
    if (state == ContactState.CONTACT_SETTLING && (impatient || losses() >= MOST_LOSSES)) {
      state = ContactState.BOUNCING;
    }
  }

  private void judgeGap(long nanos, boolean wasOpen) {
    if (!wasOpen) {
      openSinceNanos = nanos;
    }
    if (nanos - openSinceNanos >= span(bounds.liftSeconds())) {
      state = ContactState.LIFTED;
    } else if (state == ContactState.STEADY || losses() >= MOST_LOSSES) {
      state = ContactState.BOUNCING;
    }
  }

  private int losses() {
    int losses = 0;
    boolean flowed = false;
    for (Sample sample : memory) {
      losses += flowed && !sample.flows() ? 1 : 0;
      flowed = sample.flows();
    }
    return losses;
  }

  private Contact described(long nanos) {
    boolean steady = state == ContactState.STEADY;
    double[] seen = sorted(steady ? steadyFromNanos : Long.MIN_VALUE);
    boolean lost = !steady && memory.stream().anyMatch(s -> !s.flows());
    if (seen.length == 0) {
      return new Contact(
          state, nanos, Double.NaN, Double.NaN, Double.POSITIVE_INFINITY, touchedNanos);
    }
    return new Contact(
        state,
        nanos,
        seen[seen.length / 2],
        seen[0],
        lost ? Double.POSITIVE_INFINITY : seen[seen.length - 1],
        touchedNanos);
  }

  /** The resistances that flowed since a time, ascending. */
  private double[] sorted(long fromNanos) {
    double[] seen =
        memory.stream()
            .filter(s -> s.flows() && s.nanos() >= fromNanos)
            .mapToDouble(Sample::ohms)
            .toArray();
    Arrays.sort(seen);
    return seen;
  }

  private static long span(double seconds) {
    return Math.round(seconds * NANOS);
  }
}

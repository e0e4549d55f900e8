package railglow.supply;

import railglow.observed.SupplyReading;
import railglow.safety.Envelope;

/**
 * Judges readings while a probe in a hand makes and breaks the contact at a harmless level: all
 * limits are as always, but a change between held voltage and held current is no breach, and one
 * reading whose exchanges lie on both sides of a bounce isn't either. An output that holds neither
 * for a whole second is. Remembers since when; for one thread.
 */
final class ProbeJudge extends ReadingJudge {
  private static final long LONGEST_NANOS = 1_000_000_000L;
  private boolean neither;
  private long sinceNanos;

  ProbeJudge(Envelope envelope, ChannelAbility channel, long settleNanos) {
    super(envelope, channel, settleNanos);
  }

  @Override
  boolean loadIsFixed() {
    return false;
  }

  @Override
  Breach holdsNeither(SupplyReading reading, Commanded commanded) {
    Breach breach = super.holdsNeither(reading, commanded);
    if (breach == null) {
      neither = false;
      return null;
    }
    if (!neither) {
      neither = true;
      sinceNanos = reading.startNanos();
    }
    return reading.endNanos() - sinceNanos >= LONGEST_NANOS ? breach : null;
  }
}

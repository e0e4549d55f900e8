package railglow.safety;

/**
 * All limits that hold for a run, intersected; each knows its origin. Immutable.
 *
 * @param maxVolts at the supply's terminals
 * @param maxAmperes through the leads
 * @param maxWatts volts times amperes
 * @param maxJoules over the whole run
 * @param maxCelsius hottest pixel anywhere in the picture
 * @param maxRiseKelvin hottest pixel above its own start
 * @param maxReadingAgeSeconds a supply reading older than this is a breach while the output is on
 * @param maxFrameAgeSeconds a camera frame older than this is a breach while the output is on
 */
public record Envelope(
    Bound maxVolts,
    Bound maxAmperes,
    Bound maxWatts,
    Bound maxJoules,
    Bound maxCelsius,
    Bound maxRiseKelvin,
    Bound maxReadingAgeSeconds,
    Bound maxFrameAgeSeconds) {
  /** Limits nothing; the start of an intersection. */
  public static final Envelope OPEN =
      new Envelope(
          Bound.NONE,
          Bound.NONE,
          Bound.NONE,
          Bound.NONE,
          Bound.NONE,
          Bound.NONE,
          Bound.NONE,
          Bound.NONE);

  /** The stricter limit of both, field by field. */
  public Envelope and(Envelope other) {
    return new Envelope(
        maxVolts.and(other.maxVolts),
        maxAmperes.and(other.maxAmperes),
        maxWatts.and(other.maxWatts),
        maxJoules.and(other.maxJoules),
        maxCelsius.and(other.maxCelsius),
        maxRiseKelvin.and(other.maxRiseKelvin),
        maxReadingAgeSeconds.and(other.maxReadingAgeSeconds),
        maxFrameAgeSeconds.and(other.maxFrameAgeSeconds));
  }

  public Envelope withMaxVolts(double volts, String origin) {
    return and(
        new Envelope(
            new Bound(volts, origin),
            Bound.NONE,
            Bound.NONE,
            Bound.NONE,
            Bound.NONE,
            Bound.NONE,
            Bound.NONE,
            Bound.NONE));
  }

  public Envelope withMaxAmperes(double amperes, String origin) {
    return and(
        new Envelope(
            Bound.NONE,
            new Bound(amperes, origin),
            Bound.NONE,
            Bound.NONE,
            Bound.NONE,
            Bound.NONE,
            Bound.NONE,
            Bound.NONE));
  }

  public Envelope withMaxWatts(double watts, String origin) {
    return and(
        new Envelope(
            Bound.NONE,
            Bound.NONE,
            new Bound(watts, origin),
            Bound.NONE,
            Bound.NONE,
            Bound.NONE,
            Bound.NONE,
            Bound.NONE));
  }

  public Envelope withMaxJoules(double joules, String origin) {
    return and(
        new Envelope(
            Bound.NONE,
            Bound.NONE,
            Bound.NONE,
            new Bound(joules, origin),
            Bound.NONE,
            Bound.NONE,
            Bound.NONE,
            Bound.NONE));
  }

  public Envelope withMaxCelsius(double celsius, String origin) {
    return and(
        new Envelope(
            Bound.NONE,
            Bound.NONE,
            Bound.NONE,
            Bound.NONE,
            new Bound(celsius, origin),
            Bound.NONE,
            Bound.NONE,
            Bound.NONE));
  }

  public Envelope withMaxRiseKelvin(double kelvin, String origin) {
    return and(
        new Envelope(
            Bound.NONE,
            Bound.NONE,
            Bound.NONE,
            Bound.NONE,
            Bound.NONE,
            new Bound(kelvin, origin),
            Bound.NONE,
            Bound.NONE));
  }

  public Envelope withMaxReadingAgeSeconds(double seconds, String origin) {
    return and(
        new Envelope(
            Bound.NONE,
            Bound.NONE,
            Bound.NONE,
            Bound.NONE,
            Bound.NONE,
            Bound.NONE,
            new Bound(seconds, origin),
            Bound.NONE));
  }

  public Envelope withMaxFrameAgeSeconds(double seconds, String origin) {
    return and(
        new Envelope(
            Bound.NONE,
            Bound.NONE,
            Bound.NONE,
            Bound.NONE,
            Bound.NONE,
            Bound.NONE,
            Bound.NONE,
            new Bound(seconds, origin)));
  }
}

package railglow.sim.wire;

/**
 * How the simulated supply is built.
 *
 * @param serial as in its identity
 * @param family where it shows regulation and trips
 * @param channels 1 or 2; the board hangs on the first
 * @param maxVolts highest it can be set to
 * @param maxAmperes highest limit it can be set to
 * @param wire how it behaves on its wire
 * @param voltsNoise standard deviation of a voltage reading
 * @param amperesNoise standard deviation of a current reading
 * @param voltsResolution step of a voltage reading
 * @param amperesResolution step of a current reading
 */
public record SupplySettings(
    String serial,
    StatusFamily family,
    int channels,
    double maxVolts,
    double maxAmperes,
    WireHabits wire,
    double voltsNoise,
    double amperesNoise,
    double voltsResolution,
    double amperesResolution) {
  /** Where regulation and trips are shown; supplies differ. */
  public enum StatusFamily {
    /** Operation bits 8 and 10 say CV and CC; questionable bits 0 and 1 say OV and OC trip. */
    REGULATION_IN_OPERATION,
    /**
     * Questionable bits 0 and 1 say CC and CV, bits 9 and 10 OV and OC trip; a cleared trip brings
     * the output back.
     */
    REGULATION_IN_QUESTIONABLE
  }

  public SupplySettings {
    if (channels < 1 || channels > 2) {
      throw new IllegalArgumentException("a simulated supply has 1 or 2 channels, not " + channels);
    }
  }

  public static SupplySettings usual() {
    return new SupplySettings(
        "SIM0001",
        StatusFamily.REGULATION_IN_OPERATION,
        1,
        30,
        5,
        WireHabits.plain(0.002),
        0.4e-3,
        0.15e-3,
        1e-3,
        0.1e-3);
  }

  public SupplySettings withFamily(StatusFamily newFamily) {
    return new SupplySettings(
        serial,
        newFamily,
        channels,
        maxVolts,
        maxAmperes,
        wire,
        voltsNoise,
        amperesNoise,
        voltsResolution,
        amperesResolution);
  }

  public SupplySettings withChannels(int newChannels) {
    return new SupplySettings(
        serial,
        family,
        newChannels,
        maxVolts,
        maxAmperes,
        wire,
        voltsNoise,
        amperesNoise,
        voltsResolution,
        amperesResolution);
  }

  public SupplySettings withReplySeconds(double seconds) {
    return withWire(wire.withReplySeconds(seconds));
  }

  public SupplySettings withWire(WireHabits newWire) {
    return new SupplySettings(
        serial,
        family,
        channels,
        maxVolts,
        maxAmperes,
        newWire,
        voltsNoise,
        amperesNoise,
        voltsResolution,
        amperesResolution);
  }
}

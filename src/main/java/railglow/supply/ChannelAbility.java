package railglow.supply;

import railglow.units.Interval;

/**
 * What one channel can do.
 *
 * @param volts settable
 * @param voltsStep smallest change, 0 when not known
 * @param amperes settable current limit
 * @param amperesStep smallest change, 0 when not known
 * @param maxWatts infinite when only volts and amperes limit it
 * @param voltsReadStep smallest change of the read-back, 0 when not known
 * @param amperesReadStep likewise
 * @param voltsError of the read-back
 * @param amperesError of the read-back; also what it may show with the output off
 */
public record ChannelAbility(
    Interval volts,
    double voltsStep,
    Interval amperes,
    double amperesStep,
    double maxWatts,
    double voltsReadStep,
    double amperesReadStep,
    MeterError voltsError,
    MeterError amperesError) {}

package railglow.report;

/**
 * What a rail read to ground before and after the repair, for the owner's page.
 *
 * @param beforeOhms NaN when not known
 * @param normal what is normal, in words, for example "45 ohm or more"; empty when not known
 * @param afterOhms NaN until it is measured
 */
public record OhmReading(String rail, double beforeOhms, String normal, double afterOhms) {}

/**
 * The method: from quarter means to heat sources with their certainty. Pure functions.
 *
 * <p>Owns planes, reduction, statistics, matched filters, significance, localisation, phase.
 *
 * <p>Must not know threads, clocks, files, devices, boards.
 */
package railglow.thermal;

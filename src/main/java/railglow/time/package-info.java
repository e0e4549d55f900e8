/**
 * The only room that reads a clock, sleeps or waits.
 *
 * <p>Owns clocks, wall stamps, the thread that runs a step object.
 *
 * <p>Must not know what the loops do.
 */
package railglow.time;

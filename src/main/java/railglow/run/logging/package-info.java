/**
 * Logging: volts, amperes, watts and status beside frames, without pulsing.
 *
 * <p>Owns the start condition, marks and triggers, what is followed in each frame, and the order in
 * which the threads of a log begin and end.
 *
 * <p>Must not know files of settings, the terminal and the method of pulses.
 */
package railglow.run.logging;

/**
 * The programme of pulses as data.
 *
 * <p>Owns sequences, their expansion to edges and cycles, the dry run, the forecast.
 *
 * <p>Must not know devices and limits.
 */
package railglow.pulse;

/**
 * What may be done to the board, and the memory of the first reason to stop.
 *
 * <p>Owns the envelope, refusals, breaches, stop causes, the latch, permits.
 *
 * <p>Must not know devices: it decides, others act.
 */
package railglow.safety;

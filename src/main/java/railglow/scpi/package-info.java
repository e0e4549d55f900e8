/**
 * SCPI and IEEE 488.2 as text: program messages, replies, errors, status registers.
 *
 * <p>Owns the grammar, both ways: the controller and the simulated supply use it.
 *
 * <p>Must not know how bytes travel, and any particular instrument.
 */
package railglow.scpi;

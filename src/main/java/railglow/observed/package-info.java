/**
 * What was seen: the common tongue of devices, journal and run.
 *
 * <p>Owns readings, frames with their marks, edges; values only.
 *
 * <p>Must not know who saw it and what is done with it.
 */
package railglow.observed;

/**
 * Everything that can be made to go wrong on the simulated bench, by switch and by time.
 *
 * <p>Owns the kinds of fault, their textual form, and which are active when.
 *
 * <p>Must not know how a fault is carried out.
 */
package railglow.sim.fault;

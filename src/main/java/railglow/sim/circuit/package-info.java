/**
 * The electrical side of the simulated bench: output stage, leads, contact, rail, fault.
 *
 * <p>Owns volts, amperes and where the energy goes.
 *
 * <p>Must not know SCPI, heat flow, pictures.
 */
package railglow.sim.circuit;

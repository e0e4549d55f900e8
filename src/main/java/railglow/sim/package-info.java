/**
 * The other end of the wire: a simulated bench with real physics.
 *
 * <p>Owns the simulated supply, load, thermal board and camera, their faults, and the truth they
 * write.
 *
 * <p>Must not know the controller: only the command line may start it.
 */
package railglow.sim;

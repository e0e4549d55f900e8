/**
 * The wire side of the simulated bench: the supply's SCPI, the servers for supply and camera.
 *
 * <p>Owns commands and replies, sockets, terminals, and the faults on the wire.
 *
 * <p>Must not know the physics behind an output or a picture.
 */
package railglow.sim.wire;

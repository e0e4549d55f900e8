/**
 * Heat on a board: a thin plate with parts on it, losing heat to the room.
 *
 * <p>Owns the heat equation and the lumped parts.
 *
 * <p>Must not know where the power comes from and who looks at the temperatures.
 */
package railglow.sim.heat;

/**
 * What the simulated thermal camera sees and what it makes of it.
 *
 * <p>Owns the view, the scene with its emissivities and reflections, the camera's noise and times.
 *
 * <p>Must not know supplies and who receives the frames.
 */
package railglow.sim.picture;

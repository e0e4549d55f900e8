/**
 * From the rise that is seen back to the heat that makes it: the plate's conduction undone as far
 * as the noise allows, and the energy balance.
 *
 * <p>Owns the thin plate as a model, the regularised inversion and what it says of power.
 *
 * <p>Must not know boards, runs or where the planes come from.
 */
package railglow.thermal.inverse;

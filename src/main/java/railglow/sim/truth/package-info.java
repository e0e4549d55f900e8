/**
 * What truly happened on the simulated bench.
 *
 * <p>Owns the truth log, in memory and as a file beside the run.
 *
 * <p>Must not know how the controller sees it.
 */
package railglow.sim.truth;

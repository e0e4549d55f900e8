/**
 * Stepped voltage and current of a rail: what kind of path it is.
 *
 * <p>Owns the straight line fit with errors, the check of a step against those before it, and the
 * classes of paths. Pure; the stepping itself belongs to the run.
 *
 * <p>Must not know devices, pictures or parts.
 */
package railglow.board.ladder;

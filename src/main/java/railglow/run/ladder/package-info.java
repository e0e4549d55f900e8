/**
 * Stepped voltage on one rail, from almost nothing up, without a camera.
 *
 * <p>Owns the plan of levels, the stepping and the end at the first step that departs.
 *
 * <p>Must not know pictures or parts.
 */
package railglow.run.ladder;

/**
 * Resistance readings, what is normal, which rail to hunt first, and how hard it may be pushed.
 *
 * <p>Owns readings and their judgement, the proposal of limits, and the arithmetic of measuring a
 * resistance through leads. Pure.
 *
 * <p>Must not know pictures, heat sources or devices.
 */
package railglow.board.readings;

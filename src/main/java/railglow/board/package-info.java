/**
 * The thing under repair.
 *
 * <p>Owns rails, parts, nets, readings and what is normal, registration of picture to board,
 * suspects.
 *
 * <p>Must not know devices, runs, files of a run.
 */
package railglow.board;

/**
 * Where things are: outlines in millimetres, and the map between the board and a thermal picture.
 *
 * <p>Owns outlines, package sizes, registration and the errors of positions.
 *
 * <p>Must not know rails, readings or verdicts.
 */
package railglow.board.geometry;

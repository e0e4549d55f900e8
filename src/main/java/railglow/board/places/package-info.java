/**
 * Named points, lines and areas of a picture whose temperature is followed.
 *
 * <p>Owns how they are written down and which pixels they cover.
 *
 * <p>Must not know frames, files and who looks at them.
 */
package railglow.board.places;

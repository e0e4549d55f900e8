/**
 * Drawings as values, and what turns them into SVG and pixels.
 *
 * <p>Owns shapes, colour maps, axes, the placing of labels.
 *
 * <p>Must not know runs and their files.
 */
package railglow.report.draw;

/**
 * Frames from any source, decoded, stamped and marked.
 *
 * <p>Owns frame sources, layouts, the frame pool, the arrival clock, marks.
 *
 * <p>Must not know supplies, pulses, the method.
 */
package railglow.camera;

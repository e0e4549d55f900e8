/**
 * How late the camera is, measured: a small resistor in view is pulsed, and its warming is laid
 * over the edges of the supply.
 *
 * <p>Owns the fit and what is gathered for it.
 *
 * <p>Must not know how pulses are made.
 */
package railglow.camera.alignment;

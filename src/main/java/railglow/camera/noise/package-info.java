/**
 * What the camera does when nothing happens: noise, drift, bad pixels.
 *
 * <p>Owns measurements on frames of a still scene, and what follows from them for a run.
 *
 * <p>Must not know runs or pulses.
 */
package railglow.camera.noise;

/**
 * Whether, and how far, the scene has moved against the camera.
 *
 * <p>Owns the estimate of a shift between two images, its error, and undoing it.
 *
 * <p>Must not know why it moved, or what a run does about it.
 */
package railglow.camera.motion;

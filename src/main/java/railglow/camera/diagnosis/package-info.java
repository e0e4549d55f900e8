/**
 * What looks wrong with a camera's descriptor, judged by one frame.
 *
 * <p>Owns guesses in plain words and the picture to look at.
 *
 * <p>Must not know how frames are fetched.
 */
package railglow.camera.diagnosis;

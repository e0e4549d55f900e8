/**
 * A run in progress: the conductor, the guard, the labelling and reduction of frames.
 *
 * <p>Owns the threads of a run and the way its data takes.
 *
 * <p>Must not know wires, file formats, screens.
 */
package railglow.run;

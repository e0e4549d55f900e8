/**
 * The append-only record of a run and its format.
 *
 * <p>Owns entries, writer, reader, the frame store, the format version.
 *
 * <p>Must not know devices: it is told values.
 */
package railglow.journal;

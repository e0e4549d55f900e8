/**
 * From a run folder to something a person reads or another tool opens.
 *
 * <p>Owns HTML, pictures, tables and planes made from the journal.
 *
 * <p>Must not know devices and runs in progress.
 */
package railglow.report;

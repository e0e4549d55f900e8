/**
 * Where cases and runs are kept and found again.
 *
 * <p>Owns case and run folders, the catalogue.
 *
 * <p>Must not know devices and the method.
 */
package railglow.casebook;

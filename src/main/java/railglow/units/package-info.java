/**
 * Quantities with their units, as text and as numbers.
 *
 * <p>Owns the parsing and printing of quantities, and the types that keep a rise apart from a
 * temperature.
 *
 * <p>Must not know nothing else of the program.
 */
package railglow.units;

/**
 * Placement and netlist files as other programs write them.
 *
 * <p>Owns the reading of placement tables and of IPC-D-356A netlists from bytes. Every input gives
 * a value or an exception that names file, line and column.
 *
 * <p>Must not know rails, registration or suspects, and opens no file itself.
 */
package railglow.board.imports;

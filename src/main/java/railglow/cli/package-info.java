/**
 * The commands, their exit codes, signals.
 *
 * <p>Owns the command line and the wiring of a real or simulated bench.
 *
 * <p>Must not know anything it could leave to a room below.
 */
package railglow.cli;

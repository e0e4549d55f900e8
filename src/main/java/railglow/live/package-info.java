/**
 * What the operator sees and hears during a run.
 *
 * <p>Owns the status line and all other live displays.
 *
 * <p>Must not know how to raise anything: it can ask for a stop and nothing else.
 */
package railglow.live;

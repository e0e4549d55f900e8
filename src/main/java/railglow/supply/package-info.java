/**
 * The bench supply and the one thread that owns its output.
 *
 * <p>Owns the supply contract, the descriptor-driven driver, the keeper, the companion.
 *
 * <p>Must not know cameras, the method, the journal.
 */
package railglow.supply;

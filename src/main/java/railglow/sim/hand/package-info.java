/**
 * The simulated hand that holds a probe: touching, bouncing, slipping, lifting.
 *
 * <p>Owns the script of moves and the contact resistance at each time.
 *
 * <p>Must not know supplies and what listens to the contact.
 */
package railglow.sim.hand;

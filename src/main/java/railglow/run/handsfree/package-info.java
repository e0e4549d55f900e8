/**
 * Hands-free hunting: a probe in a hand is felt, runs follow its touches.
 *
 * <p>Owns the sensing level, what a contact is, the touches of a session and their comparison.
 *
 * <p>Must not know sounds, screens and how devices are opened.
 */
package railglow.run.handsfree;

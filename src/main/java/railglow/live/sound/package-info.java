/**
 * Sounds for an operator who can't look: what they mean, how they are made, how they are played.
 *
 * <p>Owns scores, their synthesis, the thread that plays.
 *
 * <p>Must not know runs and contacts.
 */
package railglow.live.sound;

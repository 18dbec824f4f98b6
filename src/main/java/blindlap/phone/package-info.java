/**
 * How does a phone on the trail come to the day? Pages for rider and starter served on a network of
 * one's own, who is let in, what a phone sends and what it is told.
 *
 * <p>The page and the command that switch phones on come in. Of Blindlap it imports {@code
 * desk.day}, {@code session.day}, {@code wording.day}, {@code ride}, {@code timing}, {@code plan}
 * and {@code fault}. Never here: JavaFX, and anything that knows the key's side; there is no page
 * for a helper.
 */
@NullMarked
package blindlap.phone;

import org.jspecify.annotations.NullMarked;

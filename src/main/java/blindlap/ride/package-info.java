/**
 * How does the rider's day go? What the score sheet asks and where it stands, the guess, the
 * watches, taking back, what may be said of the day and what that does to the result. It knows no
 * window: a page on any surface extends what is here and says how it shows it.
 *
 * <p>Pages on which a rider answers come in, and the helper's page for the events that both may
 * tell. Of Blindlap it imports {@code desk.day}, {@code session.day}, {@code wording.day}, {@code
 * plan} and {@code timing}. Never here: JavaFX, and anything that knows the key's side.
 */
@NullMarked
package blindlap.ride;

import org.jspecify.annotations.NullMarked;

/**
 * What may rider and starter know of a session? The day without key: what was planned, ridden and
 * said so far, its laps, guesses, codes and hand-overs, and what is counted from them.
 *
 * <p>Everybody may come in. Of Blindlap it imports {@code plan} and {@code timing} alone. Never
 * here: the order, a key, a helper's record, an entry or anything else from which one of them can
 * be reached; {@code session} hands the day out and is not seen from here.
 */
@NullMarked
package blindlap.session.day;

import org.jspecify.annotations.NullMarked;

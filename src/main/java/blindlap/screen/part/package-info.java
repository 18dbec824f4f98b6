/**
 * What are pages built of? Parts in JavaFX, looks in style sheets, no decisions. A part takes
 * finished words and callbacks, or reads a bundle; what they mean is decided elsewhere.
 *
 * <p>All pages come in, also the rider's. Of Blindlap it imports {@code plot}, {@code wording.day},
 * {@code session.day}, {@code desk.day} and {@code ride}. Never here: another page, and anything
 * that knows the key's side.
 */
@NullMarked
package blindlap.screen.part;

import org.jspecify.annotations.NullMarked;

/**
 * How is the rider's day put into words? The sentences of the day, problems as sentences, the
 * reader of the bundles and the rounding that all other words build on.
 *
 * <p>Everybody may come in. Of Blindlap it imports {@code fault}, {@code plan} and {@code
 * session.day} alone. Never here: words on findings, on the key or on the whole record; those stand
 * in {@code wording}, which asks this room and is not asked by it.
 */
@NullMarked
package blindlap.wording.day;

import org.jspecify.annotations.NullMarked;

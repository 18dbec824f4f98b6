/**
 * What may rider and starter do on the day, and what becomes of it? The use cases as their pages
 * see them, each answered with the day alone. {@code desk} carries them out on the whole record.
 *
 * <p>Pages for riders and starters come in, and whoever shows or tests them. Never here: a
 * parameter, answer or field that leads to the key's side, however many steps away; so nothing of
 * {@code session} proper, {@code seal}, {@code review}, {@code exchange} or {@code desk} proper.
 */
@NullMarked
package blindlap.desk.day;

import org.jspecify.annotations.NullMarked;

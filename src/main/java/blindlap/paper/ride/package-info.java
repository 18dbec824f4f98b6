/**
 * What paper do rider and starter hold? Score sheets and the starter's sheet, made of the day.
 *
 * <p>Whoever prints comes in. It imports {@code paper.sheet}, {@code session.day}, {@code
 * wording.day} and {@code plan}. Never here: what depends on the order, in words, width or number
 * of pages; so no session, no key, no helper's schedule.
 */
@NullMarked
package blindlap.paper.ride;

import org.jspecify.annotations.NullMarked;

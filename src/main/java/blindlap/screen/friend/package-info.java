/**
 * What does a friend do beforehand? Masks are sealed under the friend's phrase, prepared units are
 * measured and recorded.
 *
 * <p>The window comes in, and what is shown stands behind the cover, as on the helper's pages.
 * Never here: anything that a rider sees or hears.
 */
package blindlap.screen.friend;

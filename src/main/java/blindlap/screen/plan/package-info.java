/**
 * What shall be compared, and will the day show it? The plan page with its rows, pictures and
 * answers while typing, the workshop beside it, and the commit.
 *
 * <p>The window and the notebook's starting points come in. Never here: a check that the desk does
 * not do too, a sentence that is not in the bundles, the helper's phrase once it was noted.
 */
package blindlap.screen.plan;

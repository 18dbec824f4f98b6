/**
 * What came out? The review page after unsealing, and before it the blind review, on which laps are
 * declared void or kept by someone who cannot know the setup.
 *
 * <p>The window comes in. Never here: on the blind page, anything of the key, not even as width,
 * order or wait; on both, a number that wording did not round or a verdict that review did not
 * give.
 */
package blindlap.screen.review;

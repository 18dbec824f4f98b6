/**
 * What does the day say, once its key is open? Lap records and key become findings: comparisons,
 * verdicts, caveats, guesses, what was void, what stands beside the planned result; a rider's noise
 * over sessions; series pooled.
 *
 * <p>Command, compute, desk, exchange, paper, picture, wording and the pages after unsealing come
 * in. Never here: a sentence or a rounded number, a drawing, a file, a formula that stats could
 * hold, and, as long as a session is sealed, anything that depends on its order.
 */
package blindlap.review;

/**
 * Can the rider tell? Choices and their discrimination, preference of pairs, sensitivity, and
 * whether guesses were better than chance over the orders that could have been drawn.
 *
 * <p>Review, compute and wording come in. Never here: the statement that a blind held. A test can
 * find a sign that it did not, and a large p is no proof of anything.
 */
package blindlap.stats.tell;

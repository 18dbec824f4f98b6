/**
 * Do the setups differ, and by how much? Re-randomisation over the orders that could have been
 * drawn: two setups with the confidence curve, more of them, several measures, counts, watched
 * harm, uneven voids, days cut short, and the verdict.
 *
 * <p>Compute, plan, review and the rooms that show their results come in, and stats rooms that
 * build on a comparison. Never here: laps, bikes, words, an order drawn for riding, an
 * approximation not named in the result.
 */
package blindlap.stats.compare;

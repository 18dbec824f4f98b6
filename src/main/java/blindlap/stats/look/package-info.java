/**
 * Looking before a day has ended: how much of the error a look may spend, and the boundary that
 * keeps the whole within its level.
 *
 * <p>Review, compute and wording come in. Never here: an early statement that setups do not differ;
 * no look allows one.
 */
package blindlap.stats.look;

/**
 * What do several sessions or riders say together? The product of the days' orders for these riders
 * on these days; equal weights or a modified interval for riders in general; averages over
 * sessions.
 *
 * <p>Review, compute and the rooms that show a series come in. Never here: which sessions belong
 * together, whether a series was declared, a verdict from fewer than four riders.
 */
package blindlap.stats.pool;

/**
 * How much does one rider scatter from stint to stint, and do judgements agree? Noise of a day and
 * over days with its interval, repeatability, components of variance, agreement of raters and of
 * rankings.
 *
 * <p>Stats rooms on power and pooling, plan, review, compute and what shows noise come in. Never
 * here: where a day came from, whether it was blind, an interval that is right only for normal laps
 * without saying so.
 */
package blindlap.stats.noise;

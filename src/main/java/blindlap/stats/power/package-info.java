/**
 * What can a day show before it is ridden? Detectable differences and the odds of each verdict, by
 * formula where it was found good enough and by simulated days where not.
 *
 * <p>Plan, review, compute and what tells of a plan come in. Never here: a simulated figure without
 * its error, a generator without a given seed, the noise of a rider (it is handed in).
 */
package blindlap.stats.power;

/**
 * How likely is a value under a textbook distribution? Noncentral t, normal curve, quantiles,
 * limits of shares, sums that lose no digits, and the interval as a value: what other stats rooms
 * calculate with.
 *
 * <p>Other stats rooms and whoever holds an interval come in; this one imports only fault. Never
 * here: a set of orders, a design, a decision.
 */
package blindlap.stats.distribution;

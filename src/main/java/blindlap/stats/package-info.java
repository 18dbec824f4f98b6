/** Numbers in, numbers out: admissible orders, curves, intervals, verdicts, noise and power. */
package blindlap.stats;

/**
 * Which orders could have been drawn? Sets of admissible orders under a rule, as a count, a walk, a
 * membership test and random members for reference sets; the drift that is removed, and which
 * values of a day count.
 *
 * <p>All stats rooms, plan, seal, review and what reads orders from files come in; this one imports
 * only fault. Never here: the draw of the order that will be ridden. That is seal's alone.
 */
package blindlap.stats.order;

/**
 * What is to be compared, how, and what can such a day show? Setups and settings, measures, rules
 * and protocols, timetable, hints while planning, detectable differences and odds before riding. A
 * plan writes its own canonical text, which is what gets sealed.
 *
 * <p>Nearly every room comes in. Never here: an order that will be ridden (a plan knows how many
 * orders there are, and only seal draws one), a fact of a day, a file, a clock.
 */
package blindlap.plan;

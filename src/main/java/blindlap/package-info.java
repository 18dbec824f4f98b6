/**
 * How do the parts of the program come together? One class reads what only the outside world has
 * (arguments, clock, secure source, locale, environment) and hands it to desk, notebook, window and
 * command line.
 *
 * <p>Nobody imports it. No decision, no calculation and no sentence for people may be here:
 * whatever could be tested without starting the program belongs to a room.
 */
package blindlap;

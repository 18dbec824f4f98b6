/**
 * Is it the helper who is looking? The cover that hides a helper's page, the door that asks for the
 * phrase, and the rule by which a page closes itself when nobody touches it.
 *
 * <p>The plan and swap pages come in. Never here: the order itself. A cover looks the same whatever
 * lies behind it, and what is typed at its door stays neither on screen nor in a log.
 */
package blindlap.screen.cover;

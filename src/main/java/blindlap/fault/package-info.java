/**
 * What is wrong, and where? Problems as values with a fixed kind and arguments, checks of
 * arguments, numbers as people type them, canonical JSON: what every room needs to say no, or to
 * say the same bytes again.
 *
 * <p>Every room may come in; this one imports none. Never here: a sentence (wording makes it of
 * kind and arguments), an exception for what a user may well do, anything that knows a bike, a lap
 * or a key.
 */
package blindlap.fault;

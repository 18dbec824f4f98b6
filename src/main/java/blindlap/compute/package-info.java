/**
 * What is asked in a calculation request, and what is the answer? Requests are read strictly,
 * answered by the same methods that a report uses, and printed with fixed names and full digits;
 * check files hold such an answer against a published one. Findings as JSON come from here as well.
 *
 * <p>Command, desk, exchange and paper come in. Never here: a formula (stats and workshop have
 * them), a rounded number, a translated word, a default that changes an answer without being said
 * in it.
 */
package blindlap.compute;

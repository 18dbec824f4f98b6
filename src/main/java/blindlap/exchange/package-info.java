/**
 * In which text does a plan, a fact, a lap or a whole session leave this program and come back? The
 * forms are described in docs and outlast the program: what was once written is read for ever, and
 * what cannot be read is said with place and reason. The notebook stores these same texts.
 *
 * <p>Desk and store come in. Never here: a decision about a day, a repair that is not told, a
 * number that was rounded on the way out, the order in a form that a rider may see before
 * unsealing.
 */
package blindlap.exchange;

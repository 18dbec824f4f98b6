/**
 * Which drawing shows this finding? Turns findings, guesses, noise and series, and the values by
 * code while the key is sealed, into drawings with their words and their spoken text.
 *
 * <p>The review and notebook pages and the reports come in. Never here: a calculation, a number
 * rounded otherwise than by wording, a colour (a drawing names inks), JavaFX. What shows the order
 * is made from a finding, which exists only after unsealing.
 */
package blindlap.picture;

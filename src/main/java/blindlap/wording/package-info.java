/**
 * How is it said? Findings, plans, problems and questions become whole sentences from the resource
 * bundles; numbers are rounded here and nowhere else (docs/method.md#rounding).
 *
 * <p>Whoever shows something to people comes in. Never here: a sentence glued together from pieces,
 * a verdict or a number that is not in the finding, a file, a toolkit.
 */
package blindlap.wording;

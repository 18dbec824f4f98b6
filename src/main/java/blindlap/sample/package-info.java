/**
 * How does Blindlap look with days in it? Invented sessions made in the way of real ones: through
 * the desk, with a clock and sources of their own, and with the same facts at the end.
 *
 * <p>The command line comes in. Never here: a real rider, product, shop or trail, a short cut past
 * the desk, the clock or the secure source of the machine.
 */
package blindlap.sample;

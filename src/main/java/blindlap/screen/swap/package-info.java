/**
 * What goes on the bike now? The helper's pages: settings to be fitted, the check before riding,
 * the countdown that is the same for a swap and a dummy swap.
 *
 * <p>The window comes in, and what is shown stands behind the cover. Never here: anything that a
 * rider sees or hears that depends on the order; the time a stint takes to hand over is the plan's,
 * whatever is fitted.
 */
package blindlap.screen.swap;

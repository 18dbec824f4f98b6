/**
 * What do I set for this one stint? Somebody who is not the helper types the three words of a slip
 * and is shown it once; afterwards the rider is asked whether anything of it was seen.
 *
 * <p>The window opens it from the Swap page, and puts the question on the Ride page. Never here:
 * another stint, or anything of this one once its time is over.
 */
package blindlap.screen.onestint;

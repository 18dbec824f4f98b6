/**
 * What do I mount next? The part of the Ride page of a rider who swaps alone: the next setup is
 * shown, mounted, measured and checked before it is ridden.
 *
 * <p>The window puts it in the place of the hand-over. Never here: anything of a stint that was not
 * shown yet; of a prepared unit nothing but its code.
 */
package blindlap.screen.alone;

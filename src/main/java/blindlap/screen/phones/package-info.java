/**
 * Who may score from the trail? Phones are switched on here, let in and thrown out. In: what the
 * phones of a session are, addresses of this machine, what a person presses. Never: the key, or
 * anything that a page with it has in hand; while this page is in view, every page with a key is
 * closed.
 */
@NullMarked
package blindlap.screen.phones;

import org.jspecify.annotations.NullMarked;

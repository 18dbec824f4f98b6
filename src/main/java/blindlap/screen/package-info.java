/**
 * Which page is open, and how does one get to the next? The window, its frame and the list of
 * pages; what a page needs is handed to it here.
 *
 * <p>Only the root package comes in. Every page family is a room of its own below this one, with
 * its model beside its view, and knows no other family. Never here: what a page shows, a decision
 * about a day, a second way to do what the desk does.
 */
package blindlap.screen;

/**
 * Which pass is which lap? A recording of a ridden day is settled here, before unsealing. In: a
 * recording, the laps of the day by their codes, and what a person says. Never: the key, a time of
 * day, or anything between a finish and the next start.
 */
@NullMarked
package blindlap.screen.recording;

import org.jspecify.annotations.NullMarked;

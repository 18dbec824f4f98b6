/**
 * What does a watch say? A time as a record of two clocks at both ends, so that a laptop that slept
 * or whose clock was set is told apart from a slow lap.
 *
 * <p>Session, desk, exchange and the ride page come in; this one imports nobody. Never here: a
 * clock that was not handed in, a setup, a guess about what a doubtful time should have been.
 */
package blindlap.timing;

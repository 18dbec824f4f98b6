/**
 * Where does the clock start and stop? The Trail page: a line from a recorded lap, gates across it,
 * versions, files of trails.
 *
 * <p>The window comes in. Never here: a session's order or key, anything of the time between laps,
 * a map from elsewhere.
 */
@NullMarked
package blindlap.screen.trail;

import org.jspecify.annotations.NullMarked;

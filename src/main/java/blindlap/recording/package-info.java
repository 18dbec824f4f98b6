/**
 * Tracks on the ground: positions with times, gates across the trail, and when a track crosses them
 * (docs/method.md#gates).
 */
@NullMarked
package blindlap.recording;

import org.jspecify.annotations.NullMarked;

/**
 * What does the rider see, and what can he touch? The Ride page with its models and views.
 *
 * <p>The window comes in to build the page; no other page does. It imports the blind side's rooms
 * ({@code ride}, {@code desk.day}, {@code session.day}, {@code wording.day}, {@code screen.part}),
 * {@code plan}, {@code timing} and JavaFX. Never here: {@code session}, {@code seal}, {@code
 * review}, {@code wording}, {@code desk} or {@code exchange} themselves, not even by a detour.
 */
@NullMarked
package blindlap.screen.ride;

import org.jspecify.annotations.NullMarked;

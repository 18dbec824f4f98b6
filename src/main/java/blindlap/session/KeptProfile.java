package blindlap.session;

import blindlap.plan.Profile;
import java.time.Instant;

/**
 * A version of a profile.
 *
 * @param profile name and measures; without measures where this version removed it
 * @param number of the version among those of its name, from 1, by time
 * @param at when it was made
 */
public record KeptProfile(Profile profile, int number, Instant at) {}

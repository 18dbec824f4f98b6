package blindlap.session;

import java.time.Instant;

/**
 * Which version of which trail.
 *
 * @param name of the trail
 * @param number of the version in this notebook, from 1
 * @param sha256 SHA-256 of its text (docs/trail-file.md), by which every notebook knows it
 * @param at when it was kept
 */
public record TrailTitle(String name, int number, String sha256, Instant at) {}

/**
 * How does a notebook survive? One SQLite file: entries that can only be added, read back and
 * re-hashed before they count; drafts; backups, checks, recovery and merging. Implements the
 * session's ports.
 *
 * <p>Only the root package comes in. SQL and JDBC belong here and nowhere else. Never here: a fact
 * judged, a text form of its own (exchange has them), a write to a damaged file.
 */
package blindlap.store;

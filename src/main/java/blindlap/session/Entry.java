package blindlap.session;

import blindlap.session.day.ByPhone;
import blindlap.session.day.SessionId;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One fact in its chain. Entries are the truth of a notebook; everything else is folded from them.
 *
 * @param session whose fact it is
 * @param notebook in which notebook it was written
 * @param number place in the chain of this session and notebook, from 1
 * @param previous hash of the entry before it in this chain; 32 zero bytes for the first
 * @param seen heads of the session's other chains that the writer knew
 * @param at when it was written
 * @param zone time zone of the writer
 * @param fact what happened
 * @param phone which message of which phone said it; null where no phone did. Since version 7
 */
public record Entry(
    SessionId session,
    NotebookId notebook,
    long number,
    Hash previous,
    List<Head> seen,
    Instant at,
    ZoneId zone,
    Fact fact,
    @Nullable ByPhone phone) {
  /** One that no phone said. */
  public Entry(
      SessionId session,
      NotebookId notebook,
      long number,
      Hash previous,
      List<Head> seen,
      Instant at,
      ZoneId zone,
      Fact fact) {
    this(session, notebook, number, previous, seen, at, zone, fact, null);
  }

  public Entry {
    seen = List.copyOf(seen);
  }

  /**
   * When it was said: by a phone's clock as far as it is known how that goes, and otherwise when it
   * was written.
   */
  public Instant when() {
    return phone == null ? at : phone.at();
  }
}

package blindlap.review;

import blindlap.session.Entry;
import blindlap.session.Fact;
import blindlap.session.SeriesEnded;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Who could have known a result of a series before its last session was closed. Of a seal that was
 * opened in one session and a review that was closed in another, the entries themselves say which
 * came first, as far as they name each other ({@link SeriesOrder}).
 */
public final class SeriesPeeks {
  /** How the note of an early end began before it was an entry of its own. */
  private static final String NOTED = "series ended early: ";

  private SeriesPeeks() {}

  /**
   * A session of a series that was unsealed while another was still open.
   *
   * @param session the unsealed one, by its id
   * @param notebook in which it was unsealed, by its id
   * @param at when its seal was opened
   * @param open ids of the sessions that were not closed then
   */
  public record Peek(String session, String notebook, Instant at, List<String> open) {
    public Peek {
      open = List.copyOf(open);
    }
  }

  /**
   * A declared series that was ended before its end.
   *
   * @param session in which it is written down
   * @param at when
   * @param reason why
   * @param decidedBy by whom; empty in records of older programs
   */
  public record Ended(String session, Instant at, String reason, String decidedBy) {}

  /**
   * What was found.
   *
   * @param peeks in the order of the unsealing
   * @param byClocks true if only clocks tell the order of two entries
   */
  public record Found(List<Peek> peeks, boolean byClocks) {
    public Found {
      peeks = List.copyOf(peeks);
    }
  }

  /** The early end that a session carries, if any. */
  public static Optional<Ended> ended(SessionState state) {
    for (StoredEntry stored : state.entries()) {
      Entry entry = stored.entry();
      if (entry.fact() instanceof SeriesEnded ended) {
        return Optional.of(
            new Ended(state.id().text(), entry.at(), ended.reason(), ended.decidedBy()));
      }
      if (entry.fact() instanceof Fact.DeviationNoted noted && noted.what().startsWith(NOTED)) {
        return Optional.of(
            new Ended(state.id().text(), entry.at(), noted.what().substring(NOTED.length()), ""));
      }
    }
    return Optional.empty();
  }

  /**
   * Looks through a series.
   *
   * @param all every session that names it, abandoned ones included
   * @param counted those of its declared number
   */
  public static Found of(List<SessionState> all, List<SessionState> counted) {
    List<Peek> peeks = new ArrayList<>();
    boolean byClocks = false;
    for (SessionState one : all) {
      for (StoredEntry opening : openings(one)) {
        List<String> open = new ArrayList<>();
        for (SessionState other : counted) {
          SeriesOrder order = order(one, opening, other);
          byClocks |= order.byClocks();
          if (!order.first()) {
            open.add(other.id().text());
          }
        }
        if (!open.isEmpty()) {
          String notebook = opening.entry().notebook().text();
          peeks.add(new Peek(one.id().text(), notebook, opening.entry().at(), open));
        }
      }
    }
    peeks.sort(java.util.Comparator.comparing(Peek::at));
    return new Found(peeks, byClocks);
  }

  /** Every opening of a session's seal: a second one elsewhere changes nothing but was seen too. */
  static List<StoredEntry> openings(SessionState one) {
    return one.entries().stream()
        .filter(stored -> stored.entry().fact() instanceof Fact.SealOpened)
        .toList();
  }

  /** Whether a review was closed before a seal of another session was opened. */
  private static SeriesOrder order(SessionState one, StoredEntry opening, SessionState other) {
    StoredEntry closing = other.closing().orElse(null);
    if (one.id().equals(other.id())) {
      return new SeriesOrder(true, false);
    }
    return closing == null
        ? new SeriesOrder(false, false)
        : SeriesOrder.of(other, closing, one, opening);
  }
}

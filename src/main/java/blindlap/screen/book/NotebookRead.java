package blindlap.screen.book;

import blindlap.desk.SessionList;
import blindlap.session.SessionSummary;
import blindlap.session.day.SessionId;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The list as it was read at once.
 *
 * @param all every session
 * @param found those that the search finds
 * @param inHand the session in hand
 * @param version of the notebook
 * @param series where sessions stand in their series
 */
record NotebookRead(
    List<SessionSummary> all,
    List<SessionSummary> found,
    Optional<SessionList.InHand> inHand,
    long version,
    Map<SessionId, String> series) {}

package blindlap.store;

import blindlap.fault.Problem;
import blindlap.seal.Cover;
import blindlap.seal.Fingerprint;
import blindlap.session.Head;
import blindlap.session.NotebookFault;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import blindlap.session.day.SessionId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * Covered orders of a damaged notebook. A cover is wrapped under the last entry of its chain; where
 * that entry is lost its hash may still stand in the file, and then the cover goes on under the
 * last entry that was saved.
 */
final class CoverRecovery {
  private static final String HEX = "[0-9a-f]{64}";

  private final Map<String, CoverTable.Row> rows = new TreeMap<>();
  private final Set<String> hashes = new HashSet<>();

  /** Takes note of what a row of the damaged file may say of covers. */
  void see(Salvage.Row row) {
    List<String> texts = row.texts();
    if (!row.ofIndex() && texts.size() == 4 && texts.get(2).matches(HEX)) {
      rows.put(
          texts.get(0), new CoverTable.Row(texts.get(0), texts.get(1), texts.get(2), texts.get(3)));
      return;
    }
    texts.stream().filter(text -> text.matches(HEX)).forEach(hashes::add);
  }

  /** Puts what opens beside the entries that were saved; what is lost of covers. */
  List<Problem> save(SqliteNotebook fresh) {
    List<Problem> lost = new ArrayList<>();
    for (SessionId session : fresh.sessions()) {
      List<StoredEntry> entries = fresh.entries(session);
      SessionState state = SessionState.of(entries);
      if (state.covered() && !state.unsealed() && !save(fresh, state)) {
        lost.add(Problem.of(NotebookFault.COVER_LOST, "session " + session.brief()));
      }
    }
    return lost;
  }

  private boolean save(SqliteNotebook fresh, SessionState state) {
    CoverTable.Row row = rows.get(state.id().text());
    if (row == null) {
      return false;
    }
    Optional<Head> end =
        state.heads().stream()
            .filter(head -> head.notebook().text().equals(row.chain()))
            .findFirst();
    Set<String> candidates = new HashSet<>(hashes);
    end.ifPresent(head -> candidates.add(head.hash().hex()));
    Optional<Cover> cover =
        end.flatMap(
            head ->
                candidates.stream()
                    .flatMap(hash -> opened(row, hash).stream())
                    .findFirst()
                    .flatMap(open -> open.under(Fingerprint.parse(head.hash().hex()))));
    cover.ifPresent(kept -> fresh.keep(state.id(), end.orElseThrow().notebook(), kept));
    return cover.isPresent();
  }

  private static Optional<Cover> opened(CoverTable.Row row, String hash) {
    try {
      return Optional.of(row.under(hash)).filter(Cover::opens);
    } catch (IllegalArgumentException e) {
      return Optional.empty(); // a row that was changed
    }
  }
}

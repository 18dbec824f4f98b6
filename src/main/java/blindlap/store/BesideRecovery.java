package blindlap.store;

import blindlap.exchange.TrailFile;
import blindlap.fault.Problem;
import blindlap.fault.Unreadable;
import blindlap.session.Hash;
import blindlap.session.NotebookFault;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Trails and positions of a damaged notebook: what gives its hash is kept. Trails are numbered anew
 * in the order in which they were kept; plans name them by their hash.
 */
final class BesideRecovery {
  private static final String HEX = "[0-9a-f]{64}";

  private final Map<String, String> trails = new HashMap<>();
  private final Map<String, Instant> times = new HashMap<>();
  private final List<byte[]> contents = new ArrayList<>();
  private final Map<String, String> changed = new TreeMap<>();

  /** Takes note of what a row of the damaged file may say. */
  void see(Salvage.Row row) {
    List<String> texts = row.texts();
    if (row.ofIndex()) {
      return;
    }
    // A trail: name, hash, text, time. A content: its hash, and bytes.
    if (texts.size() == 4 && texts.get(1).matches(HEX)) {
      trail(texts);
    } else if (texts.size() == 1 && texts.get(0).matches(HEX) && row.blobs().size() == 1) {
      ContentTable.whole(texts.get(0), row.blobs().get(0)).ifPresent(contents::add);
    }
  }

  private void trail(List<String> texts) {
    if (whole(texts)) {
      trails.put(texts.get(1), texts.get(2));
      times.merge(texts.get(1), Instant.parse(texts.get(3)), BesideRecovery::earlier);
    } else {
      changed.put(texts.get(1), texts.get(0));
    }
  }

  /** Versions of trails that are there and do not verify. */
  List<Problem> losses() {
    return changed.entrySet().stream()
        .filter(each -> !trails.containsKey(each.getKey()))
        .map(each -> Problem.of(NotebookFault.TRAIL_LOST, "", each.getValue()))
        .toList();
  }

  private static Instant earlier(Instant a, Instant b) {
    return a.isBefore(b) ? a : b;
  }

  private static boolean whole(List<String> texts) {
    try {
      Instant.parse(texts.get(3));
      return Hash.of(texts.get(2)).hex().equals(texts.get(1))
          && TrailFile.text(TrailFile.trail(texts.get(2))).equals(texts.get(2));
    } catch (Unreadable | DateTimeException e) {
      return false;
    }
  }

  /** Puts them into the new notebook; true if there was any. */
  boolean save(SqliteNotebook fresh) {
    times.entrySet().stream()
        .sorted(Map.Entry.comparingByValue())
        .forEach(
            each ->
                fresh
                    .trails()
                    .keep(
                        TrailFile.trail(
                            java.util.Objects.requireNonNull(trails.get(each.getKey()))),
                        each.getValue()));
    contents.forEach(fresh.contents()::put);
    return !trails.isEmpty() || !contents.isEmpty();
  }
}

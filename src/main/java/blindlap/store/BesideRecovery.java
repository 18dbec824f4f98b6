package blindlap.store;

import blindlap.exchange.ProfileText;
import blindlap.exchange.TrailFile;
import blindlap.fault.Problem;
import blindlap.fault.Unreadable;
import blindlap.session.Hash;
import blindlap.session.KeptProfile;
import blindlap.session.NotebookFault;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Trails, profiles and positions of a damaged notebook: what gives its hash is kept. Trails are
 * numbered anew in the order in which they were kept; plans name them by their hash.
 */
final class BesideRecovery {
  private static final String HEX = "[0-9a-f]{64}";

  private final Map<String, String> trails = new HashMap<>();
  private final Map<String, Instant> times = new HashMap<>();
  private final List<byte[]> contents = new ArrayList<>();
  private final Map<String, String> changed = new TreeMap<>();
  private final Map<String, KeptProfile> profiles = new TreeMap<>();
  private final Set<String> changedProfiles = new TreeSet<>();

  /** Takes note of what a row of the damaged file may say. */
  void see(Salvage.Row row) {
    List<String> texts = row.texts();
    if (row.ofIndex()) {
      return;
    }
    // A trail: name, hash, text, time. A content: its hash, and bytes. A profile: hash, text.
    if (texts.size() == 4 && texts.get(1).matches(HEX)) {
      trail(texts);
    } else if (texts.size() == 1 && texts.get(0).matches(HEX) && row.blobs().size() == 1) {
      ContentTable.whole(texts.get(0), row.blobs().get(0)).ifPresent(contents::add);
    } else if (texts.size() == 2 && texts.get(0).matches(HEX)) {
      profile(new ProfileTable.Row(texts.get(0), texts.get(1)));
    }
  }

  private void profile(ProfileTable.Row row) {
    Optional<ProfileText.Read> read = KeptProfiles.read(row);
    if (read.isPresent()) {
      // Its number follows from the times of all versions once they are together.
      profiles.put(row.sha256(), new KeptProfile(read.get().profile(), 1, read.get().at()));
    } else {
      changedProfiles.add(row.sha256());
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

  /** Versions of trails and profiles that are there and do not verify. */
  List<Problem> losses() {
    List<Problem> losses = new ArrayList<>(lostTrails());
    long lost = changedProfiles.stream().filter(each -> !profiles.containsKey(each)).count();
    if (lost > 0) {
      losses.add(Problem.of(NotebookFault.PROFILES_LOST, "", lost));
    }
    return losses;
  }

  private List<Problem> lostTrails() {
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
    fresh.profiles().bring(List.copyOf(profiles.values()));
    return !trails.isEmpty() || !contents.isEmpty() || !profiles.isEmpty();
  }
}

package blindlap.store;

import blindlap.exchange.EntryText;
import blindlap.fault.Problem;
import blindlap.fault.Unreadable;
import blindlap.session.Addition;
import blindlap.session.Chains;
import blindlap.session.Hash;
import blindlap.session.Head;
import blindlap.session.NotebookException;
import blindlap.session.NotebookException.Kind;
import blindlap.session.NotebookFault;
import blindlap.session.NotebookTrouble;
import blindlap.session.RecoveryReport;
import blindlap.session.StoredEntry;
import blindlap.session.day.SessionId;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * Puts everything of a damaged notebook that still verifies into a new one. The damaged file is
 * read through a copy and never written to; it must not be open in this process.
 */
public final class Recovery {
  private static final int SESSIONS_AT_ONCE = 100;
  private static final String MARK = "\"session\":\"";
  private static final int ID_LENGTH = 36;

  private final Path damaged;
  private final Path fresh;
  private final Map<SessionId, Long> indexed = new TreeMap<>();
  private final CoverRecovery covers = new CoverRecovery();
  private final BesideRecovery beside = new BesideRecovery();
  private final List<Problem> losses = new ArrayList<>();
  private long sessions;
  private long entries;
  private boolean drafts;

  private Recovery(Path damaged, Path fresh) {
    this.damaged = damaged;
    this.fresh = fresh;
  }

  /**
   * Recovers.
   *
   * @param damaged the damaged notebook, left as it is
   * @param fresh where the new notebook goes; nothing may lie there
   * @param newId 16 random bytes for its id: a new one, so that it never goes on with an old chain
   * @param now time for the new notebook
   * @throws NotebookException if there is no such file, something lies at the new place, nothing of
   *     it verifies, or the new one cannot be written
   */
  public static RecoveryReport run(Path damaged, Path fresh, byte[] newId, Instant now) {
    if (!Files.isRegularFile(damaged)) {
      throw new NotebookException(
          Kind.NOT_FOUND, NotebookTrouble.NOTHING_TO_RECOVER, null, damaged);
    }
    if (Files.exists(fresh)) {
      throw new NotebookException(Kind.OTHER, NotebookTrouble.PLACE_TAKEN, null, fresh);
    }
    NotebookFile.checkPlace(fresh);
    Recovery recovery = new Recovery(damaged, fresh);
    try {
      return recovery.run(newId, now);
    } catch (IOException e) {
      throw Copies.failed(fresh, e);
    }
  }

  private RecoveryReport run(byte[] newId, Instant now) throws IOException {
    Path folder = Files.createTempDirectory(fresh.toAbsolutePath().getParent(), "recovery");
    try {
      Path copy = folder.resolve("damaged");
      Copies.withJournal(damaged, copy);
      Path made = folder.resolve("made");
      try (SqliteNotebook notebook = SqliteNotebook.open(made, newId, now)) {
        fill(notebook, copy);
      }
      if (entries == 0 && !drafts) {
        throw new NotebookException(
            Kind.NOT_A_NOTEBOOK, NotebookTrouble.NOTHING_VERIFIES, null, damaged);
      }
      Files.move(made, fresh, StandardCopyOption.ATOMIC_MOVE);
      return new RecoveryReport(sessions, entries, losses);
    } finally {
      Copies.deleteFolder(folder);
    }
  }

  private void fill(SqliteNotebook notebook, Path copy) throws IOException {
    try (Salvage salvage = Salvage.open(copy)) {
      Map<SessionId, List<Salvage.Place>> places = new TreeMap<>();
      for (Salvage.Place place : salvage.places()) {
        salvage.row(place).ifPresent(row -> sort(row, place, places));
        salvage.row(place).ifPresent(covers::see);
        salvage.row(place).ifPresent(beside::see);
      }
      List<StoredEntry> waiting = new ArrayList<>();
      int taken = 0;
      for (Map.Entry<SessionId, List<Salvage.Place>> session : places.entrySet()) {
        waiting.addAll(saved(session.getKey(), confirmed(salvage, session.getValue())));
        indexed.remove(session.getKey());
        if (++taken % SESSIONS_AT_ONCE == 0) {
          add(notebook, waiting);
        }
      }
      add(notebook, waiting);
      indexed
          .keySet()
          .forEach(lost -> losses.add(Problem.of(NotebookFault.SESSION_LOST, at(lost))));
    }
    losses.addAll(covers.save(notebook));
    losses.addAll(beside.losses());
    Map<String, String> found = drafts(copy);
    found.forEach(notebook::putDraft);
    drafts = beside.save(notebook) || !found.isEmpty();
  }

  private void sort(
      Salvage.Row row, Salvage.Place place, Map<SessionId, List<Salvage.Place>> places) {
    if (row.ofIndex()) {
      // The index of chains: session, notebook, number. It tells of entries that are gone.
      if (row.texts().size() == 2 && id(row.texts().get(1)).isPresent()) {
        id(row.texts().get(0)).ifPresent(id -> indexed.merge(id, 1L, Long::sum));
      }
      return;
    }
    entryText(row)
        .ifPresent(
            text -> {
              int at = text.lastIndexOf(MARK) + MARK.length();
              int end = Math.min(at + ID_LENGTH, text.length());
              id(text.substring(at, end))
                  .ifPresent(id -> places.computeIfAbsent(id, key -> new ArrayList<>()).add(place));
            });
  }

  private static Optional<String> entryText(Salvage.Row row) {
    return row.texts().stream()
        .filter(text -> text.startsWith("{") && text.lastIndexOf(MARK) > 0)
        .findFirst();
  }

  private static Optional<SessionId> id(String text) {
    try {
      return Optional.of(new SessionId(text));
    } catch (IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  /** Entries whose hash stands beside them or is named by another entry. */
  private static List<StoredEntry> confirmed(Salvage salvage, List<Salvage.Place> places)
      throws IOException {
    Map<Hash, StoredEntry> found = new HashMap<>();
    Set<String> named = new HashSet<>();
    for (Salvage.Place place : places) {
      Optional<Salvage.Row> row = salvage.row(place);
      if (row.isPresent()) {
        named.addAll(row.get().texts());
        read(row.get()).ifPresent(entry -> found.put(entry.hash(), entry));
      }
    }
    for (StoredEntry entry : found.values()) {
      named.add(entry.entry().previous().hex());
      entry.entry().seen().forEach(head -> named.add(head.hash().hex()));
    }
    return found.values().stream().filter(entry -> named.contains(entry.hash().hex())).toList();
  }

  private static Optional<StoredEntry> read(Salvage.Row row) {
    try {
      return entryText(row).map(EntryText::read);
    } catch (Unreadable changed) {
      return Optional.empty();
    }
  }

  private List<StoredEntry> saved(SessionId session, List<StoredEntry> found) {
    List<StoredEntry> kept = Chains.verifying(session, found);
    Map<String, Long> ends = new HashMap<>();
    for (StoredEntry entry : found) {
      ends.merge(entry.entry().notebook().text(), entry.entry().number(), Math::max);
      for (Head head : entry.entry().seen()) {
        ends.merge(head.notebook().text(), head.number(), Math::max);
      }
    }
    long known =
        Math.max(
            ends.values().stream().mapToLong(Long::longValue).sum(),
            indexed.getOrDefault(session, 0L));
    if (kept.isEmpty()) {
      losses.add(Problem.of(NotebookFault.SESSION_LOST, at(session)));
    } else if (kept.size() < known) {
      losses.add(Problem.of(NotebookFault.ENTRIES_LOST, at(session), kept.size(), known));
    }
    return kept;
  }

  private void add(SqliteNotebook notebook, List<StoredEntry> waiting) {
    if (waiting.isEmpty()) {
      return;
    }
    Addition added = notebook.addEntries(waiting);
    if (!(added instanceof Addition.Added all)) {
      throw new IllegalStateException("entries that verify were refused: " + added);
    }
    entries += all.added();
    sessions += waiting.stream().map(entry -> entry.entry().session()).distinct().count();
    waiting.clear();
  }

  /** Drafts are no entries and carry no hash; they are taken as they are read, if they are. */
  private static Map<String, String> drafts(Path copy) {
    try (Connection connection = Connections.connect(copy, Connections.BUSY_MILLISECONDS)) {
      return new DraftTable(connection).all();
    } catch (SQLException e) {
      return Map.of();
    }
  }

  private static String at(SessionId session) {
    return "session " + session.brief();
  }
}

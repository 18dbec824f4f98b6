package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.Plan;
import blindlap.session.NotebookException;
import blindlap.session.NotebookException.Kind;
import blindlap.session.NotebookReport;
import blindlap.session.RecoveryReport;
import blindlap.session.StoredEntry;
import blindlap.session.day.SessionId;
import blindlap.wording.day.Trouble;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** A notebook of ten sessions that is damaged again and again, and what must hold each time. */
final class Damage {
  static final int PAGE = 4096;
  static final int SESSIONS = 10;

  final Path folder;
  final byte[] whole;
  final Map<SessionId, List<StoredEntry>> truth = new TreeMap<>();
  final Map<SessionId, Set<Integer>> pages = new HashMap<>();
  final Map<String, Integer> counts = new TreeMap<>();

  Damage(Path folder) throws IOException {
    this.folder = folder;
    Path file = folder.resolve("whole.blindlap");
    Random random = new Random(1);
    try (SqliteNotebook notebook = Books.open(file)) {
      notebook.putDraft("next", "question: Which bar?");
      for (int i = 0; i < SESSIONS; i++) {
        SessionId session = Days.session(i);
        Plan plan = Days.plan("R. Lind", "Quarry loop", 8);
        Books.put(notebook, session, Days.committed(plan, session, i));
        for (int stint = 1; stint <= 3; stint++) {
          Books.put(notebook, session, Days.lap(plan, stint, random));
        }
      }
      for (SessionId session : notebook.sessions()) {
        truth.put(session, notebook.entries(session));
      }
    }
    whole = Files.readAllBytes(file);
    findPages(file);
    assertThat(pages).hasSize(SESSIONS);
  }

  private void findPages(Path file) throws IOException {
    try (Salvage salvage = Salvage.open(file)) {
      for (Salvage.Place place : salvage.places()) {
        Salvage.Row row = salvage.row(place).orElseThrow();
        truth.keySet().stream()
            .filter(session -> row.texts().size() == 7 && row.texts().contains(session.text()))
            .forEach(
                session ->
                    pages.computeIfAbsent(session, key -> new TreeSet<>()).addAll(row.pages()));
      }
    }
  }

  /** One byte changed, every tenth time in the first page; every tenth time cut off instead. */
  byte[] any(Random random, int number) {
    if (number % 10 == 9) {
      return Arrays.copyOf(whole, random.nextInt(whole.length));
    }
    int at = random.nextInt(number % 10 == 8 ? PAGE : whole.length);
    return flipped(at, 1 + random.nextInt(255));
  }

  /** The byte at a place changed by some bits. */
  byte[] flipped(int at, int bits) {
    byte[] bytes = whole.clone();
    bytes[at] ^= (byte) bits;
    return bytes;
  }

  private Path write(byte[] bytes) throws IOException {
    return Files.write(folder.resolve("damaged.blindlap"), bytes);
  }

  private void count(String what) {
    counts.merge(what, 1, Integer::sum);
  }

  /** Opening works with every entry verified, or names the damage, and writes nothing. */
  Kind open(byte[] bytes) throws IOException {
    Path file = write(bytes);
    Kind kind = openAndRead(file);
    count(kind == Kind.OTHER ? "opened, every entry verified" : "refused as " + kind);
    assertThat(Files.readAllBytes(file)).as("nothing is written to it").isEqualTo(bytes);
    return kind;
  }

  private Kind openAndRead(Path file) {
    try (SqliteNotebook notebook = Books.open(file)) {
      Map<SessionId, List<StoredEntry>> found = new TreeMap<>();
      for (SessionId session : notebook.sessions()) {
        found.put(session, notebook.entries(session));
      }
      assertThat(found).isEqualTo(truth);
      return Kind.OTHER; // opened: every entry there is, as it was
    } catch (NotebookException refusal) {
      assertThat(refusal.kind())
          .as(refusal.getMessage())
          .isIn(EnumSet.of(Kind.DAMAGED, Kind.NOT_A_NOTEBOOK, Kind.TOO_NEW));
      return refusal.kind();
    }
  }

  /** The full check says what is wrong where opening refuses, and writes nothing. */
  void verify(byte[] bytes, Kind opened) throws IOException {
    Path file = write(bytes);
    SqliteFiles files =
        new SqliteFiles(
            Clock.fixed(Days.MORNING, ZoneOffset.UTC), () -> new SeededBytes(9).next(16));
    try {
      NotebookReport report = files.verify(file);
      if (opened == Kind.DAMAGED) {
        assertThat(report.sound()).isFalse();
      }
      count(report.sound() ? "full check: sound" : "full check: names what is wrong");
    } catch (NotebookException refusal) {
      assertThat(refusal.kind()).as(refusal.getMessage()).isEqualTo(opened);
      count("full check: refused");
    }
    assertThat(Files.readAllBytes(file)).as("nothing is written to it").isEqualTo(bytes);
  }

  /** Every session that the damage did not touch is saved, and nothing is written. */
  void recover(byte[] bytes) throws IOException {
    Path file = write(bytes);
    Path fresh = folder.resolve("recovered.blindlap");
    RecoveryReport report;
    try {
      report = Recovery.run(file, fresh, new SeededBytes(9).next(16), Days.MORNING);
    } catch (NotebookException nothing) {
      assertThat(Trouble.sentence(nothing)).contains("no new notebook was made");
      assertThat(truth.keySet()).allMatch(session -> touched(session, bytes));
      count("recovery: nothing verifies");
      return;
    } finally {
      assertThat(Files.readAllBytes(file)).as("nothing is written to it").isEqualTo(bytes);
    }
    try (SqliteNotebook notebook = Books.open(fresh)) {
      assertThat(notebook.verify().problems()).isEmpty();
      long entries = 0;
      for (SessionId session : truth.keySet()) {
        List<StoredEntry> found = notebook.entries(session);
        entries += found.size();
        compare(session, found, bytes);
      }
      assertThat(report.entries()).isEqualTo(entries);
      boolean all = entries == truth.values().stream().mapToLong(List::size).sum();
      count(all ? "recovery: everything" : "recovery: with losses");
    }
    Files.delete(fresh);
    assertThat(folder).isDirectoryNotContaining("glob:**recovery*");
  }

  private void compare(SessionId session, List<StoredEntry> found, byte[] bytes) {
    assertThat(truth.get(session)).containsAll(found);
    boolean all = found.equals(truth.get(session));
    boolean touched = touched(session, bytes);
    if (!touched) {
      assertThat(all).as("a session that the damage did not touch").isTrue();
    }
    count(
        (touched ? "sessions touched, " : "sessions not touched, ")
            + (all ? "saved whole" : found.isEmpty() ? "lost" : "saved in part"));
  }

  private boolean touched(SessionId session, byte[] bytes) {
    for (int page : pages.get(session)) {
      int from = (page - 1) * PAGE;
      int to = from + PAGE;
      if (to > bytes.length || !Arrays.equals(bytes, from, to, whole, from, to)) {
        return true;
      }
    }
    return false;
  }
}

package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import blindlap.plan.Plan;
import blindlap.session.Fact;
import blindlap.session.NotebookException;
import blindlap.session.NotebookException.Kind;
import blindlap.session.RecoveryReport;
import blindlap.session.SessionId;
import blindlap.session.StoredEntry;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A notebook of ten sessions that is damaged a thousand times. */
class CorruptionTest {
  private static final int PAGE = 4096;
  private static final int SESSIONS = 10;

  @TempDir private static Path folder;
  private static byte[] whole;
  private static final Map<SessionId, List<StoredEntry>> TRUTH = new TreeMap<>();
  private static final Map<SessionId, Set<Integer>> PAGES = new HashMap<>();

  @BeforeAll
  static void makeNotebook() throws IOException {
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
        TRUTH.put(session, notebook.entries(session));
      }
    }
    whole = Files.readAllBytes(file);
    try (Salvage salvage = Salvage.open(file)) {
      for (Salvage.Place place : salvage.places()) {
        Salvage.Row row = salvage.row(place).orElseThrow();
        TRUTH.keySet().stream()
            .filter(session -> row.texts().size() == 7 && row.texts().contains(session.text()))
            .forEach(
                session ->
                    PAGES.computeIfAbsent(session, key -> new TreeSet<>()).addAll(row.pages()));
      }
    }
    assertThat(PAGES).hasSize(SESSIONS);
  }

  /** What opening and reading everything says. */
  private static Kind open(Path file) {
    try (SqliteNotebook notebook = Books.open(file)) {
      Map<SessionId, List<StoredEntry>> found = new TreeMap<>();
      for (SessionId session : notebook.sessions()) {
        found.put(session, notebook.entries(session));
      }
      assertThat(found).isEqualTo(TRUTH);
      return Kind.OTHER; // opened: every entry there is, as it was
    } catch (NotebookException refusal) {
      assertThat(refusal.kind())
          .as(refusal.getMessage())
          .isIn(EnumSet.of(Kind.DAMAGED, Kind.NOT_A_NOTEBOOK, Kind.TOO_NEW));
      return refusal.kind();
    }
  }

  @Test
  void after_a_thousand_flips_and_cuts_opening_verifies_all_entries_or_names_the_damage()
      throws IOException {
    Random random = new Random(20_261_114);
    Map<Kind, Integer> counts = new EnumMap<>(Kind.class);
    Path file = folder.resolve("damaged.blindlap");
    for (int i = 0; i < 1000; i++) {
      byte[] bytes = damaged(random, i);
      Files.write(file, bytes);
      Kind kind = open(file);
      counts.merge(kind, 1, Integer::sum);
      assertThat(Files.readAllBytes(file)).as("nothing is written to it").isEqualTo(bytes);
      if (i % 8 == 0) {
        recover(file, bytes);
      }
    }
    assertThat(counts).as("%s", counts).containsKeys(Kind.DAMAGED, Kind.OTHER);
    assertThat(counts.get(Kind.DAMAGED)).isGreaterThan(500);
  }

  private static byte[] damaged(Random random, int number) {
    if (number % 10 == 9) {
      return Arrays.copyOf(whole, random.nextInt(whole.length));
    }
    byte[] bytes = whole.clone();
    // Every tenth in the first page, where header and tables are described.
    int at = random.nextInt(number % 10 == 8 ? PAGE : bytes.length);
    bytes[at] ^= (byte) (1 + random.nextInt(255));
    return bytes;
  }

  private void recover(Path file, byte[] bytes) throws IOException {
    Path fresh = folder.resolve("recovered.blindlap");
    RecoveryReport report = Recovery.run(file, fresh, new SeededBytes(9).next(16), Days.MORNING);
    assertThat(Files.readAllBytes(file)).as("nothing is written to it").isEqualTo(bytes);
    try (SqliteNotebook notebook = Books.open(fresh)) {
      assertThat(notebook.verify().problems()).isEmpty();
      long entries = 0;
      for (SessionId session : TRUTH.keySet()) {
        List<StoredEntry> found = notebook.entries(session);
        entries += found.size();
        assertThat(TRUTH.get(session)).containsAll(found);
        boolean all = found.equals(TRUTH.get(session));
        if (!touched(session, bytes)) {
          assertThat(all).as("a session that the damage did not touch").isTrue();
        }
      }
      assertThat(report.entries()).isEqualTo(entries);
    }
    Files.delete(fresh);
    assertThat(folder).isDirectoryNotContaining("glob:**recovery*");
  }

  private static boolean touched(SessionId session, byte[] bytes) {
    for (int page : PAGES.get(session)) {
      int from = (page - 1) * PAGE;
      int to = from + PAGE;
      if (to > bytes.length || !Arrays.equals(bytes, from, to, whole, from, to)) {
        return true;
      }
    }
    return false;
  }

  @Test
  void what_is_lost_is_listed() throws IOException {
    SessionId session = TRUTH.keySet().iterator().next();
    List<Integer> pages = new ArrayList<>(PAGES.get(session));
    byte[] bytes = whole.clone();
    int last = pages.get(pages.size() - 1);
    Arrays.fill(bytes, (last - 1) * PAGE, last * PAGE, (byte) 0);
    Path file = folder.resolve("listed.blindlap");
    Files.write(file, bytes);
    Path fresh = folder.resolve("listed-recovered.blindlap");
    RecoveryReport report = Recovery.run(file, fresh, new SeededBytes(9).next(16), Days.MORNING);
    assertThat(report.losses())
        .anySatisfy(loss -> assertThat(loss.where()).contains(session.brief()));
    long all = TRUTH.values().stream().mapToLong(List::size).sum();
    assertThat(report.entries()).isGreaterThan(0).isLessThan(all);
  }

  @Test
  void a_sound_notebook_is_recovered_whole_with_its_drafts_and_under_an_id_of_its_own()
      throws IOException {
    Path file = folder.resolve("sound.blindlap");
    Files.write(file, whole);
    Path fresh = folder.resolve("sound-recovered.blindlap");
    RecoveryReport report = Recovery.run(file, fresh, new SeededBytes(9).next(16), Days.MORNING);
    assertThat(report.losses()).isEmpty();
    assertThat(report.sessions()).isEqualTo(SESSIONS);
    try (SqliteNotebook old = Books.open(file);
        SqliteNotebook notebook = Books.open(fresh)) {
      assertThat(notebook.drafts()).isEqualTo(old.drafts());
      assertThat(notebook.id()).isNotEqualTo(old.id());
      SessionId session = Days.session(3);
      Books.put(notebook, session, new Fact.WarmUpRidden(1));
      Books.put(old, session, new Fact.WarmUpRidden(2));
      old.addEntries(notebook.entries(session));
      assertThat(old.verify().problems()).as("both went on and still fit together").isEmpty();
    }
  }

  @Test
  void nothing_is_recovered_from_nowhere_or_over_something() throws IOException {
    Path file = folder.resolve("there.blindlap");
    Files.write(file, whole);
    assertThatThrownBy(() -> Recovery.run(folder.resolve("no"), file, new byte[16], Days.MORNING))
        .hasMessageContaining("There is no file");
    assertThatThrownBy(() -> Recovery.run(file, file, new byte[16], Days.MORNING))
        .hasMessageContaining("already");
    assertThat(Files.readAllBytes(file)).isEqualTo(whole);
  }
}

package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import blindlap.session.Fact;
import blindlap.session.NotebookException.Kind;
import blindlap.session.RecoveryReport;
import blindlap.session.day.SessionId;
import blindlap.wording.day.Trouble;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A notebook of ten sessions that is damaged hundreds of times. */
class CorruptionTest {
  private static final int TIMES = 300;
  private static final int A_RECOVERY_EVERY = 7;

  @TempDir private static Path folder;
  private static Damage damage;

  @BeforeAll
  static void makeNotebook() throws IOException {
    damage = new Damage(folder);
  }

  @Test
  void after_hundreds_of_flips_and_cuts_opening_verifies_all_entries_or_names_the_damage()
      throws IOException {
    Random random = new Random(20_261_114);
    for (int i = 0; i < TIMES; i++) {
      byte[] bytes = damage.any(random, i);
      Kind opened = damage.open(bytes);
      if (i % A_RECOVERY_EVERY == 0) {
        damage.verify(bytes, opened);
        damage.recover(bytes);
      }
    }
    assertThat(damage.counts.get("refused as DAMAGED")).isGreaterThan(TIMES / 2);
    assertThat(damage.counts.get("opened, every entry verified")).isPositive();
  }

  /**
   * Bytes of the header that make SQLite read or write the file in another way: size of pages,
   * write-ahead logging, reserved bytes, the version of this program's tables.
   */
  @ParameterizedTest
  @CsvSource({
    "16, 24", "16, 48", "18, 3", "19, 3", "20, 8", "47, 1", "56, 3", "63, 3", "63, 2", "68, 1"
  })
  void a_changed_header_is_named_or_does_no_harm_and_every_session_is_saved(int at, int bits)
      throws IOException {
    byte[] bytes = damage.flipped(at, bits);
    Kind opened = damage.open(bytes);
    damage.verify(bytes, opened);
    damage.recover(bytes);
  }

  @Test
  void what_is_lost_is_listed() throws IOException {
    SessionId session = damage.truth.keySet().iterator().next();
    List<Integer> pages = new ArrayList<>(damage.pages.get(session));
    byte[] bytes = damage.whole.clone();
    int last = pages.get(pages.size() - 1);
    Arrays.fill(bytes, (last - 1) * Damage.PAGE, last * Damage.PAGE, (byte) 0);
    Path file = folder.resolve("listed.blindlap");
    Files.write(file, bytes);
    Path fresh = folder.resolve("listed-recovered.blindlap");
    RecoveryReport report = Recovery.run(file, fresh, new SeededBytes(9).next(16), Days.MORNING);
    assertThat(report.losses())
        .anySatisfy(loss -> assertThat(loss.where()).contains(session.brief()));
    long all = damage.truth.values().stream().mapToLong(List::size).sum();
    assertThat(report.entries()).isGreaterThan(0).isLessThan(all);
  }

  @Test
  void a_sound_notebook_is_recovered_whole_with_its_drafts_and_under_an_id_of_its_own()
      throws IOException {
    Path file = folder.resolve("sound.blindlap");
    Files.write(file, damage.whole);
    Path fresh = folder.resolve("sound-recovered.blindlap");
    RecoveryReport report = Recovery.run(file, fresh, new SeededBytes(9).next(16), Days.MORNING);
    assertThat(report.losses()).isEmpty();
    assertThat(report.sessions()).isEqualTo(Damage.SESSIONS);
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
    Files.write(file, damage.whole);
    assertThatThrownBy(() -> Recovery.run(folder.resolve("no"), file, new byte[16], Days.MORNING))
        .satisfies(e -> assertThat(Trouble.sentence(e)).contains("There is no file"));
    assertThatThrownBy(() -> Recovery.run(file, file, new byte[16], Days.MORNING))
        .satisfies(e -> assertThat(Trouble.sentence(e)).contains("already"));
    assertThat(Files.readAllBytes(file)).isEqualTo(damage.whole);
  }
}

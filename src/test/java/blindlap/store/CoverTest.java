package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.fault.Problem;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.seal.Cover;
import blindlap.seal.CoveredOrder;
import blindlap.seal.SealParameters;
import blindlap.seal.Sealing;
import blindlap.seal.SealingSources;
import blindlap.session.Fact;
import blindlap.session.NotebookFault;
import blindlap.session.RecoveryReport;
import blindlap.session.StoredEntry;
import blindlap.session.day.LapId;
import blindlap.session.day.SessionId;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A covered order goes with its notebook: wrapped with every entry, backed up, checked, saved. */
class CoverTest {
  private static final Plan PLAN = Days.plan("R. Lind", "Quarry loop", 8);
  private static final SessionId SESSION = Days.session(1);

  @TempDir Path folder;
  private Path file;
  private CoveredOrder order;

  @BeforeEach
  void drawn() {
    file = folder.resolve("notebook.blindlap");
    Sealing sealing =
        new Sealing(SealingSources.allFrom(new SeededBytes(5)), new SealParameters(1));
    order = sealing.cover(PlanJson.bytes(PLAN), PLAN.rule(), SESSION.text());
  }

  private void commit(SqliteNotebook notebook) {
    Fact fact =
        new Fact.PlanCommitted(
            PLAN,
            new String(PlanJson.bytes(PLAN), StandardCharsets.UTF_8),
            null,
            true,
            order.fingerprint(),
            order.codes(),
            List.of("R. Lind"));
    notebook.commit(SESSION, List.of(fact), Days.MORNING, Days.ZONE, order);
  }

  private static void note(SqliteNotebook notebook, int stint, String words) {
    Books.put(notebook, SESSION, new Fact.NoteWritten(new LapId(stint, 1), words));
  }

  private static List<Integer> setups(Cover cover) {
    return IntStream.rangeClosed(0, 8).mapToObj(i -> cover.setup(i).orElseThrow()).toList();
  }

  private List<Integer> drawnSetups() {
    return IntStream.rangeClosed(0, 8).mapToObj(order::setup).toList();
  }

  private static List<Integer> shown(SqliteNotebook notebook) {
    return setups(notebook.cover(SESSION).orElseThrow());
  }

  @Test
  void every_entry_wraps_the_order_anew_and_it_stays_the_same_order() throws Exception {
    List<String> places = new ArrayList<>();
    try (SqliteNotebook notebook = Books.open(file)) {
      commit(notebook);
      for (int stint = 1; stint <= 4; stint++) {
        assertThat(shown(notebook)).isEqualTo(drawnSetups());
        places.add(Books.ask(file, "SELECT places FROM cover"));
        note(notebook, stint, "dry");
      }
      assertThat(notebook.verify().problems()).isEmpty();
    }
    assertThat(places).doesNotHaveDuplicates();
    assertThat(places).extracting(String::length).containsOnly(places.get(0).length());
    try (SqliteNotebook notebook = Books.open(file)) {
      assertThat(shown(notebook)).isEqualTo(drawnSetups());
    }
  }

  @Test
  void an_append_that_fails_leaves_entry_and_cover_as_they_were() throws Exception {
    try (SqliteNotebook notebook = Books.open(file)) {
      commit(notebook);
    }
    Books.sql(
        file,
        "CREATE TRIGGER full BEFORE UPDATE ON cover BEGIN SELECT RAISE(ABORT, 'disk full'); END");
    try (SqliteNotebook notebook = Books.open(file)) {
      org.assertj.core.api.Assertions.assertThatThrownBy(() -> note(notebook, 1, "dry"))
          .isInstanceOf(blindlap.session.NotebookException.class);
      assertThat(notebook.entries(SESSION)).hasSize(1);
      assertThat(shown(notebook)).isEqualTo(drawnSetups());
    }
  }

  @Test
  void a_backup_goes_on_with_the_same_order_on_a_chain_of_its_own() {
    Path backup;
    try (SqliteNotebook notebook = Books.open(file)) {
      commit(notebook);
      note(notebook, 1, "dry");
    }
    backup =
        new Backups(
                file,
                folder.resolve("backups"),
                Clock.fixed(Days.MORNING, ZoneOffset.UTC),
                () -> new SeededBytes(9).next(16))
            .now();
    try (SqliteNotebook restored = Books.open(backup);
        SqliteNotebook first = Books.open(file)) {
      assertThat(restored.id()).isNotEqualTo(first.id());
      assertThat(shown(restored)).isEqualTo(drawnSetups());
      note(restored, 2, "damp");
      note(restored, 3, "wet");
      assertThat(shown(restored)).isEqualTo(drawnSetups());
      assertThat(restored.verify().problems()).isEmpty();
      first.addEntries(restored.entries(SESSION));
      note(first, 4, "dry again");
      assertThat(shown(first)).isEqualTo(drawnSetups());
      restored.addEntries(first.entries(SESSION));
      assertThat(shown(restored)).isEqualTo(drawnSetups());
      assertThat(first.verify().problems()).isEmpty();
      assertThat(restored.verify().problems()).isEmpty();
    }
  }

  @Test
  void a_notebook_that_got_the_session_has_no_cover_and_is_sound() {
    try (SqliteNotebook notebook = Books.open(file);
        SqliteNotebook other = Books.open(folder.resolve("other.blindlap"), 2)) {
      commit(notebook);
      other.addEntries(notebook.entries(SESSION));
      note(other, 1, "seen from here");
      assertThat(other.cover(SESSION)).isEmpty();
      assertThat(other.verify().problems()).isEmpty();
      notebook.addEntries(other.entries(SESSION));
      note(notebook, 2, "dry");
      assertThat(shown(notebook)).isEqualTo(drawnSetups());
    }
  }

  @Test
  void the_full_check_names_a_cover_that_is_gone_or_another() throws Exception {
    try (SqliteNotebook notebook = Books.open(file)) {
      commit(notebook);
    }
    List<String> changes =
        List.of(
            "UPDATE cover SET k0 = '" + "0".repeat(64) + "'",
            "UPDATE cover SET places = 'AAAA'",
            "UPDATE cover SET session = '" + Days.session(2).text() + "'",
            "DELETE FROM cover");
    for (String change : changes) {
      Path changed = folder.resolve("changed-" + changes.indexOf(change) + ".blindlap");
      Files.copy(file, changed);
      Books.sql(changed, change);
      try (SqliteNotebook notebook = Books.open(changed)) {
        assertThat(notebook.verify().problems())
            .as(change)
            .extracting(Problem::fault)
            .contains(NotebookFault.COVER_DIFFERS);
      }
    }
  }

  @Test
  void recovery_saves_the_cover_also_where_the_last_entry_is_lost() throws Exception {
    List<StoredEntry> entries;
    try (SqliteNotebook notebook = Books.open(file)) {
      commit(notebook);
      note(notebook, 1, "dry");
      note(notebook, 2, "damp");
      entries = notebook.entries(SESSION);
    }
    RecoveryReport whole = recover(file, "whole.blindlap");
    assertThat(whole.losses()).isEmpty();
    Books.sql(
        file,
        "DROP TRIGGER entry_is_not_changed",
        "UPDATE entry SET text = replace(text, 'damp', 'snow') WHERE number = 3");
    assertThat(recover(file, "cut.blindlap").losses())
        .extracting(Problem::fault)
        .containsExactly(NotebookFault.ENTRIES_LOST);
    Books.sql(file, "DELETE FROM cover");
    assertThat(recover(file, "bare.blindlap").losses())
        .extracting(Problem::fault)
        .contains(NotebookFault.COVER_LOST);
    for (String name : List.of("whole.blindlap", "cut.blindlap")) {
      try (SqliteNotebook notebook = Books.open(folder.resolve(name))) {
        assertThat(shown(notebook)).as(name).isEqualTo(drawnSetups());
        note(notebook, 4, "on");
        assertThat(shown(notebook)).as(name).isEqualTo(drawnSetups());
        assertThat(notebook.verify().problems()).as(name).isEmpty();
      }
    }
    assertThat(entries).hasSize(3);
  }

  private RecoveryReport recover(Path damaged, String fresh) {
    return Recovery.run(damaged, folder.resolve(fresh), new SeededBytes(3).next(16), Days.MORNING);
  }

  @Test
  void covers_of_all_orders_have_one_length_and_print_nothing() throws Exception {
    List<String> rows = new ArrayList<>();
    for (long seed = 0; seed < 12; seed++) {
      Sealing sealing =
          new Sealing(SealingSources.allFrom(new SeededBytes(seed)), new SealParameters(1));
      order = sealing.cover(PlanJson.bytes(PLAN), PLAN.rule(), SESSION.text());
      Path each = folder.resolve("n-" + seed + ".blindlap");
      try (SqliteNotebook notebook = Books.open(each)) {
        commit(notebook);
        assertThat(notebook.cover(SESSION).orElseThrow()).hasToString("Cover[8 stints]");
        assertThat(order).hasToString("CoveredOrder[8 stints]");
      }
      rows.add(Books.ask(each, "SELECT k0 || places FROM cover"));
    }
    assertThat(rows).extracting(String::length).containsOnly(rows.get(0).length());
  }
}

package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.SessionFile;
import blindlap.exchange.SessionFileFault;
import blindlap.fault.Problem;
import blindlap.plan.Plan;
import blindlap.seal.Opening;
import blindlap.seal.Sealed;
import blindlap.seal.Sealing;
import blindlap.session.Addition;
import blindlap.session.ChainFault;
import blindlap.session.Fact;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import blindlap.session.day.LapId;
import blindlap.session.day.SessionId;
import blindlap.session.day.Source;
import blindlap.session.day.VoidEvent;
import blindlap.wording.day.Problems;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Sessions that move between notebooks. */
class ExchangeTest {
  private static final Plan PLAN = Days.plan("R. Lind", "Quarry loop", 8);
  private static final SessionId SESSION = Days.session(1);

  @TempDir private Path folder;
  private SqliteNotebook here;
  private SqliteNotebook there;

  @BeforeEach
  void open() {
    here = Books.open(folder.resolve("here.blindlap"), 1);
    there = Books.open(folder.resolve("there.blindlap"), 2);
  }

  @AfterEach
  void close() {
    here.close();
    there.close();
  }

  private static byte[] file(SqliteNotebook from) {
    return SessionFile.text(SESSION, from.entries(SESSION)).getBytes(StandardCharsets.UTF_8);
  }

  private static Addition move(SqliteNotebook from, SqliteNotebook to) {
    SessionFile.Reading reading = SessionFile.read(file(from));
    assertThat(reading.problems()).isEmpty();
    return to.addEntries(reading.entries());
  }

  private Sealed commit(Sealing sealing) {
    Sealed sealed = Days.seal(PLAN, SESSION, sealing);
    Books.put(here, SESSION, Days.committed(PLAN, sealed));
    return sealed;
  }

  @Test
  void a_session_moves_as_one_file_and_is_the_same_there() {
    commit(SeededBytes.sealing(1));
    Books.put(here, SESSION, Days.lap(PLAN, 1, new Random(1)));
    assertThat(move(here, there)).isEqualTo(new Addition.Added(8, 0));
    assertThat(there.entries(SESSION)).isEqualTo(here.entries(SESSION));
    assertThat(there.summaries()).isEqualTo(here.summaries());
    assertThat(file(there)).isEqualTo(file(here));
    assertThat(there.verify().problems()).isEmpty();
  }

  @Test
  void moving_it_twice_adds_nothing() {
    commit(SeededBytes.sealing(1));
    move(here, there);
    long version = there.dataVersion();
    assertThat(move(here, there)).isEqualTo(new Addition.Added(0, 1));
    assertThat(move(there, here)).isEqualTo(new Addition.Added(0, 1));
    assertThat(there.entries(SESSION)).hasSize(1);
    assertThat(there.dataVersion()).isGreaterThanOrEqualTo(version);
  }

  @Test
  void a_sealed_session_moves_sealed_and_is_opened_there_with_the_same_phrase() {
    Sealing sealing = SeededBytes.sealing(1);
    Sealed sealed = commit(sealing);
    Books.put(here, SESSION, Days.handled(sealing, sealed.lock(), SESSION, 1, "fitted Shock L"));
    String text = new String(file(here), StandardCharsets.UTF_8);
    assertThat(text).doesNotContain("fitted Shock L").doesNotContain("order=");
    move(here, there);
    SessionState state = Books.state(there, SESSION);
    assertThat(state.openKey()).isEmpty();
    Opening opening = sealing.open(state.sealedKey(), sealed.phrase());
    assertThat(opening).isInstanceOf(Opening.Opened.class);
    assertThat(
            ((Opening.Opened) opening).lock().decrypt(SESSION.text(), state.helperRecords().get(1)))
        .contains("fitted Shock L");
  }

  @Test
  void both_histories_are_kept_when_both_went_on() {
    commit(SeededBytes.sealing(1));
    move(here, there);
    Books.put(here, SESSION, Days.lap(PLAN, 1, new Random(1)));
    Books.put(there, SESSION, Days.lap(PLAN, 2, new Random(2)));
    move(here, there);
    move(there, here);
    assertThat(here.entries(SESSION)).hasSize(15).isEqualTo(there.entries(SESSION));
    assertThat(Books.state(here, SESSION).lapsRidden()).isEqualTo(2);
    Books.put(here, SESSION, new Fact.DayClosed());
    StoredEntry last = here.entries(SESSION).get(15);
    assertThat(last.entry().seen()).as("it names what it has seen").hasSize(1);
  }

  @Test
  void a_void_from_elsewhere_that_had_not_seen_the_closing_is_kept_and_shown_and_not_applied() {
    commit(SeededBytes.sealing(1));
    Books.put(here, SESSION, Days.lap(PLAN, 1, new Random(1)));
    move(here, there);
    Books.put(
        there, SESSION, new Fact.LapVoided(new LapId(1, 1), VoidEvent.TRAFFIC, "walkers", false));
    Books.put(here, SESSION, new Fact.DayClosed());
    Books.put(
        here,
        SESSION,
        ((blindlap.session.Outcome.Accepted)
                new blindlap.session.LifeCommands(Books.state(here, SESSION)).closeReview())
            .facts());
    SessionState before = Books.state(here, SESSION);
    move(there, here);
    move(here, there);
    for (SqliteNotebook notebook : List.of(here, there)) {
      SessionState state = Books.state(notebook, SESSION);
      assertThat(state.lap(new LapId(1, 1)).orElseThrow().voided()).isEmpty();
      assertThat(state.notApplied()).hasSize(1);
      assertThat(state.reviewFingerprint()).isEqualTo(before.reviewFingerprint());
      assertThat(blindlap.session.LifeCommands.reviewFingerprint(state))
          .as("what came later does not change what was closed")
          .isEqualTo(before.reviewFingerprint().orElseThrow());
    }
  }

  @Test
  void a_copied_file_that_went_on_beside_its_original_is_named_and_neither_is_touched()
      throws Exception {
    commit(SeededBytes.sealing(1));
    Path copied = folder.resolve("copied.blindlap");
    Files.copy(here.file(), copied);
    Books.put(here, SESSION, new Fact.WarmUpRidden(1));
    try (SqliteNotebook copy = Books.open(copied)) {
      Books.put(copy, SESSION, new Fact.WarmUpRidden(2));
      Addition addition = move(copy, here);
      assertThat(addition).isInstanceOf(Addition.Refused.class);
      assertThat(((Addition.Refused) addition).problems())
          .extracting(Problem::fault)
          .contains(ChainFault.FORKED);
    }
    assertThat(here.entries(SESSION)).hasSize(2);
  }

  @Test
  void a_notebook_never_takes_half_of_what_does_not_fit() {
    commit(SeededBytes.sealing(1));
    Books.put(here, SESSION, new Fact.WarmUpRidden(1), new Fact.WarmUpRidden(2));
    SessionId second = Days.session(2);
    Books.put(here, second, Days.committed(PLAN, second, 2));
    List<StoredEntry> gap = new ArrayList<>(here.entries(SESSION));
    gap.remove(1);
    gap.addAll(here.entries(second));
    assertThat(there.addEntries(gap)).isInstanceOf(Addition.Refused.class);
    assertThat(there.sessions()).isEmpty();
    List<StoredEntry> headless = here.entries(SESSION).subList(1, 3);
    assertThat(there.addEntries(headless)).isInstanceOf(Addition.Refused.class);
  }

  @Test
  void every_cut_of_the_file_is_named() {
    commit(SeededBytes.sealing(1));
    Books.put(here, SESSION, new Fact.WarmUpRidden(1), new Fact.WarmUpRidden(2));
    byte[] whole = file(here);
    for (int length = 0; length < whole.length - 1; length += 7) {
      SessionFile.Reading reading = SessionFile.read(java.util.Arrays.copyOf(whole, length));
      assertThat(reading.problems()).as("cut to %d bytes", length).isNotEmpty();
      assertThat(reading.entries()).isEmpty();
    }
    int lastLine = new String(whole, StandardCharsets.UTF_8).lastIndexOf("{\"entries\"");
    byte[] cut =
        new String(whole, StandardCharsets.UTF_8)
            .substring(0, lastLine)
            .getBytes(StandardCharsets.UTF_8);
    assertThat(SessionFile.read(cut).problems())
        .containsExactly(Problem.of(SessionFileFault.CUT_OFF, "", 3));
  }

  @Test
  void every_changed_byte_of_the_file_is_named() {
    commit(SeededBytes.sealing(1));
    Books.put(here, SESSION, new Fact.WarmUpRidden(1), new Fact.WarmUpRidden(2));
    byte[] whole = file(here);
    Random random = new Random(1);
    for (int i = 0; i < 1000; i++) {
      byte[] changed = whole.clone();
      changed[random.nextInt(whole.length - 1)] ^= (byte) (1 + random.nextInt(255));
      SessionFile.Reading reading = SessionFile.read(changed);
      assertThat(reading.problems()).isNotEmpty();
      assertThat(reading.entries()).isEmpty();
    }
  }

  @Test
  void a_changed_entry_under_a_mended_closing_line_is_named_by_its_place() {
    commit(SeededBytes.sealing(1));
    Books.put(here, SESSION, new Fact.WarmUpRidden(1), new Fact.WarmUpRidden(2));
    String text = new String(file(here), StandardCharsets.UTF_8);
    int end = text.lastIndexOf("{\"entries\"");
    String above =
        text.substring(0, end)
            .replaceFirst("\"body\":\\{\"number\":\"1\"", "\"body\":{\"number\":\"3\"");
    String mended =
        above
            + "{\"entries\":\"3\",\"sha256\":\""
            + blindlap.session.Hash.of(above).hex()
            + "\"}\n";
    List<Problem> problems = SessionFile.read(mended.getBytes(StandardCharsets.UTF_8)).problems();
    assertThat(problems).extracting(Problem::fault).containsExactly(ChainFault.NOT_LINKED);
    assertThat(problems.get(0).where()).startsWith("entry 3 of notebook");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"kind\":\"WarmUpRidden\"|\"kind\":\"TyreSwapped\"|Line 3: This entry is of the kind"
            + " \"TyreSwapped\", which is not known here, so a newer Blindlap may have written it."
            + " Nothing was added; use the newer program.",
        "\"source\":\"screen\"|\"source\":\"telepathy\"|Line 4: In this entry (LapRidden) the field"
            + " \"source\" holds \"telepathy\", which is not known here, so a newer Blindlap may have"
            + " written it. Nothing was added; use the newer program.",
        "\"number\":\"2\"}|\"number\":[2]}|Line 3: In this entry (WarmUpRidden) the field \"number\" is"
            + " missing or not as Blindlap writes it. Nothing was added; ask for the file as it was"
            + " written.",
        "\"number\":\"2\"}|\"number\":\"two\"}|Line 3: In this entry (WarmUpRidden) the field \"number\""
            + " is missing or not as Blindlap writes it. Nothing was added; ask for the file as it"
            + " was written.",
        "\"knows_key\":false|\"knows_key\":\"no\"|Line 5: In this entry (DayCutShort) the field"
            + " \"knows_key\" is missing or not as Blindlap writes it. Nothing was added; ask for the"
            + " file as it was written."
      })
  void what_a_newer_program_may_have_written_is_named_by_entry_and_field(
      String written, String instead, String sentence) {
    commit(SeededBytes.sealing(1));
    Books.put(
        here,
        SESSION,
        new Fact.WarmUpRidden(2),
        new Fact.LapRidden(new LapId(1, 1), Source.SCREEN),
        new Fact.DayCutShort(1, "rain", "the rider", false));
    String text = new String(file(here), StandardCharsets.UTF_8);
    assertThat(text).contains(written);
    String above = text.substring(0, text.lastIndexOf("{\"entries\"")).replace(written, instead);
    String mended =
        above
            + "{\"entries\":\"4\",\"sha256\":\""
            + blindlap.session.Hash.of(above).hex()
            + "\"}\n";
    assertThat(SessionFile.read(mended.getBytes(StandardCharsets.UTF_8)).problems())
        .extracting(Problems::sentence)
        .containsExactly(sentence);
  }

  @Test
  void line_ends_and_marks_that_mail_adds_do_no_harm() {
    commit(SeededBytes.sealing(1));
    String text = new String(file(here), StandardCharsets.UTF_8);
    String mailed = "\uFEFF" + text.replace("\n", "\r\n") + "\r\n";
    assertThat(SessionFile.read(mailed.getBytes(StandardCharsets.UTF_8)).problems()).isEmpty();
  }

  @Test
  void other_files_and_newer_forms_are_named() {
    assertThat(SessionFile.read("lap;time\n".getBytes(StandardCharsets.UTF_8)).problems())
        .containsExactly(Problem.of(SessionFileFault.NOT_A_SESSION, ""));
    assertThat(SessionFile.read(new byte[] {(byte) 0xff, 1}).problems())
        .containsExactly(Problem.of(SessionFileFault.NOT_UTF8, ""));
    assertThat(
            SessionFile.read(
                    "{\"form\":\"blindlap-session-2\",\"x\":1}\n".getBytes(StandardCharsets.UTF_8))
                .problems())
        .containsExactly(Problem.of(SessionFileFault.TOO_NEW, "", "blindlap-session-2"));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
  void notebooks_that_exchange_in_any_order_hold_the_same_in_the_end(long seed) {
    Random random = new Random(seed);
    List<SqliteNotebook> notebooks = new ArrayList<>(List.of(here, there));
    if (seed % 2 == 0) {
      notebooks.add(Books.open(folder.resolve("third.blindlap"), 3));
    }
    Merging merging = new Merging(notebooks, random);
    merging.begin(3);
    for (int i = 0; i < 40; i++) {
      merging.step();
    }
    merging.exchangeAll();
    SqliteNotebook first = notebooks.get(0);
    TreeMap<SessionId, List<StoredEntry>> truth = Merging.contents(first);
    assertThat(truth).hasSize(3);
    for (SqliteNotebook other : notebooks) {
      assertThat(Merging.contents(other)).isEqualTo(truth);
      assertThat(Merging.tellings(other)).isEqualTo(Merging.tellings(first));
      assertThat(other.verify().problems()).isEmpty();
    }
    assertThat(truth.values().stream().mapToInt(List::size).sum()).isEqualTo(merging.written());
    Collections.reverse(notebooks);
    notebooks.stream()
        .filter(notebook -> notebook != here && notebook != there)
        .forEach(SqliteNotebook::close);
  }
}

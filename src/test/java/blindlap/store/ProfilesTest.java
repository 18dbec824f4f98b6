package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.ProfileText;
import blindlap.plan.Profile;
import blindlap.session.Hash;
import blindlap.session.KeptProfile;
import blindlap.session.NotebookFault;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Profiles in a real notebook: versions are only added, and a hash holds name, list and time. */
class ProfilesTest {
  private static final Profile STEEP =
      new Profile("Fast and steep", List.of("lap time", "harshness"));
  private static final Profile LONG = new Profile("Long days", List.of("climbing time", "mass"));
  private static final Profile SHORTER = new Profile("FAST  and steep", List.of("lap time"));

  @TempDir private Path folder;
  private Path file;

  @BeforeEach
  void name() {
    file = folder.resolve("days.blindlap");
  }

  @Test
  void everyChangeIsAVersionAndARemovalTooWhateverTheCaseOfTheName() throws Exception {
    try (SqliteNotebook notebook = Books.open(file)) {
      assertThat(notebook.profiles().all()).isEmpty();
      assertThat(notebook.profiles().keep(STEEP, Days.MORNING))
          .isEqualTo(new KeptProfile(STEEP, 1, Days.MORNING));
      notebook.profiles().keep(LONG, Days.MORNING.plusSeconds(60));
      notebook.profiles().keep(SHORTER, Days.MORNING.plusSeconds(120));
      notebook.profiles().keep(Profile.removed("fast and steep"), Days.MORNING.plusSeconds(180));
    }
    try (SqliteNotebook notebook = Books.open(file)) {
      assertThat(notebook.profiles().all())
          .containsExactly(
              new KeptProfile(STEEP, 1, Days.MORNING),
              new KeptProfile(SHORTER, 2, Days.MORNING.plusSeconds(120)),
              new KeptProfile(Profile.removed("fast and steep"), 3, Days.MORNING.plusSeconds(180)),
              new KeptProfile(LONG, 1, Days.MORNING.plusSeconds(60)));
      assertThat(notebook.verify().sound()).isTrue();
    }
    assertThat(Books.ask(file, "SELECT measures FROM profiles WHERE name = 'Long days'"))
        .isEqualTo("[\"climbing time\",\"mass\"]");
    assertThat(Books.ask(file, "SELECT group_concat(name) FROM profiles WHERE removed"))
        .isEqualTo("fast and steep");
  }

  @Test
  void aVersionIsDatedAfterTheOneBeforeItWhateverTheClockSays() {
    try (SqliteNotebook notebook = Books.open(file)) {
      notebook.profiles().keep(STEEP, Days.MORNING);
      KeptProfile second = notebook.profiles().keep(SHORTER, Days.MORNING.minusSeconds(3600));
      assertThat(second.number()).isEqualTo(2);
      assertThat(second.at()).isEqualTo(Days.MORNING.plusMillis(1));
      // Another name is another list.
      assertThat(notebook.profiles().keep(LONG, Days.MORNING.minusSeconds(3600)).at())
          .isEqualTo(Days.MORNING.minusSeconds(3600));
    }
  }

  @Test
  void notebooksThatExchangeNumberAlikeWhoeverBringsInFirst() {
    Path other = folder.resolve("other.blindlap");
    try (SqliteNotebook here = Books.open(file);
        SqliteNotebook there = Books.open(other)) {
      here.profiles().keep(STEEP, Days.MORNING.plusSeconds(60));
      there.profiles().keep(SHORTER, Days.MORNING);
      there.profiles().keep(LONG, Days.MORNING.plusSeconds(30));
      assertThat(here.profiles().bring(there.profiles().all())).isEqualTo(2);
      assertThat(there.profiles().bring(here.profiles().all())).isEqualTo(1);
      assertThat(here.profiles().bring(there.profiles().all())).isZero();
      assertThat(here.profiles().all())
          .isEqualTo(there.profiles().all())
          .containsExactly(
              new KeptProfile(SHORTER, 1, Days.MORNING),
              new KeptProfile(STEEP, 2, Days.MORNING.plusSeconds(60)),
              new KeptProfile(LONG, 1, Days.MORNING.plusSeconds(30)));
    }
  }

  @Test
  void whatWasChangedIsNamedAndLeftOutAndADayGoesOn() throws Exception {
    try (SqliteNotebook notebook = Books.open(file)) {
      notebook.profiles().keep(STEEP, Days.MORNING);
      notebook.profiles().keep(LONG, Days.MORNING);
    }
    // Dated back by another program: the hash holds the time.
    Books.sql(
        file, "UPDATE profile SET text = replace(text, '2026', '2025') WHERE text LIKE '%steep%'");
    try (SqliteNotebook notebook = Books.open(file)) {
      assertThat(notebook.verify().problems())
          .extracting(problem -> (Object) problem.fault())
          .containsExactly(NotebookFault.PROFILE_DIFFERS);
      assertThat(notebook.profiles().all()).containsExactly(new KeptProfile(LONG, 1, Days.MORNING));
      assertThat(notebook.profiles().damaged()).isEqualTo(1);
      assertThat(notebook.profiles().keep(STEEP, Days.MORNING.plusSeconds(9)).number())
          .isEqualTo(1);
    }
  }

  @Test
  void backupsAndRecoveryCarryThem() throws Exception {
    SqliteFiles files =
        new SqliteFiles(Clock.fixed(Days.MORNING, Days.ZONE), () -> new SeededBytes(3).next(16));
    try (SqliteNotebook notebook = Books.open(file)) {
      notebook.profiles().keep(STEEP, Days.MORNING);
    }
    Path backup = files.backUp(file);
    assertThat(files.backUpIfChanged(file)).isEmpty();
    try (SqliteNotebook notebook = Books.open(file)) {
      notebook.profiles().keep(LONG, Days.MORNING.plusSeconds(60));
    }
    assertThat(files.backUpIfChanged(file)).isPresent();
    Path fresh = folder.resolve("fresh.blindlap");
    files.recover(backup, fresh);
    try (SqliteNotebook notebook = Books.open(fresh)) {
      assertThat(notebook.profiles().all())
          .containsExactly(
              new KeptProfile(STEEP, 1, Days.MORNING),
              new KeptProfile(LONG, 1, Days.MORNING.plusSeconds(60)));
    }
  }

  @Test
  void recoverySavesWhatStillVerifiesWithoutTheDatabasesHelpAndCountsWhatDoesNot()
      throws Exception {
    try (SqliteNotebook notebook = Books.open(file)) {
      notebook.profiles().keep(STEEP, Days.MORNING);
      notebook.profiles().keep(SHORTER, Days.MORNING.plusSeconds(60));
      notebook.profiles().keep(LONG, Days.MORNING);
    }
    Books.sql(file, "UPDATE profile SET text = replace(text, 'mass', 'moss')");
    byte[] bytes = Files.readAllBytes(file);
    // The first page leads to every table: without it only page by page is left.
    Arrays.fill(bytes, 100, 4096, (byte) 0);
    Files.write(file, bytes);
    Path fresh = folder.resolve("fresh.blindlap");
    var report = Recovery.run(file, fresh, new SeededBytes(9).next(16), Days.MORNING);
    assertThat(report.losses())
        .extracting(problem -> (Object) problem.fault())
        .containsExactly(NotebookFault.PROFILES_LOST);
    assertThat(report.losses().get(0).details()).containsExactly("1");
    try (SqliteNotebook notebook = Books.open(fresh)) {
      assertThat(notebook.profiles().all())
          .containsExactly(
              new KeptProfile(STEEP, 1, Days.MORNING),
              new KeptProfile(SHORTER, 2, Days.MORNING.plusSeconds(60)));
      assertThat(notebook.verify().sound()).isTrue();
    }
  }

  @Test
  void aTextIsReadInItsOneSpellingOnly() {
    String text = ProfileText.of(STEEP, Days.MORNING);
    assertThat(text)
        .isEqualTo(
            "{\"at\":\"%s\",\"measures\":[\"lap time\",\"harshness\"],\"name\":\"Fast and steep\"}"
                .formatted(Days.MORNING));
    assertThat(ProfileText.read(text).orElseThrow().profile()).isEqualTo(STEEP);
    for (String other :
        List.of(
            text.replace(",", ", "),
            text.replace("\"at\"", "\"At\""),
            text.replace("}", ",\"weight\":\"2\"}"),
            text + " ",
            "[]",
            "",
            "no profile")) {
      assertThat(ProfileText.read(other)).as(other).isEmpty();
      assertThat(KeptProfiles.read(new ProfileTable.Row(Hash.of(other).hex(), other)))
          .as(other)
          .isEmpty();
    }
    assertThat(KeptProfiles.read(new ProfileTable.Row("0".repeat(64), text))).isEmpty();
  }
}

package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.review.Edition;
import blindlap.review.RecordedFinding;
import blindlap.seal.SealParameters;
import blindlap.seal.SealingSources;
import blindlap.session.FindingSeenAgain;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.store.SqliteNotebook;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** When a finding was first looked at under another method is known for ever. */
class FirstLookTest {
  private static final String SAME =
      "Opened under method 1; first looked at under method 3 on 2026-12-01 09:00 UTC, which found"
          + " the same.";

  @TempDir Path folder;
  private final SetClock clock = new SetClock(Instant.parse("2026-12-01T09:00:00Z"));

  private Path file() {
    return folder.resolve("notebook.blindlap");
  }

  /** The notebook that the program of version 2 left, which recorded no finding. */
  private Desk old() throws IOException {
    if (!Files.exists(file())) {
      try (InputStream in =
          FirstLookTest.class.getResourceAsStream("/blindlap/store/notebook-2.blindlap")) {
        Files.copy(in, file());
      }
    }
    return new Desk(
        SqliteNotebook.open(file(), new byte[16], clock.instant()),
        clock,
        SealingSources.allFrom(count -> new byte[count]),
        new SealParameters(1),
        count -> new byte[count]);
  }

  private static SessionState unsealed(Desk desk) {
    SessionId id = desk.notebook().sessions().get(2);
    return desk.sessions().state(id).orElseThrow();
  }

  @Test
  void theFirstLookIsWrittenDownOnceWithWhatTheEarlierMethodGave() throws Exception {
    try (Desk desk = old()) {
      SessionState before = unsealed(desk);
      RecordedFinding earlier =
          RecordedFinding.atUnsealing(before, Reviews.day(before)).orElseThrow();
      List<String> text = desk.reviews().text(before);
      assertThat(text).contains(SAME);

      SessionState after = unsealed(desk);
      assertThat(after.entries()).hasSize(before.entries().size() + 1);
      FindingSeenAgain look = after.seenAgain().get(Edition.CURRENT);
      assertThat(look.same()).isTrue();
      assertThat(look.unsealedUnder()).isEqualTo(Edition.FIRST);
      assertThat(look.verdict()).isEqualTo("real and worthwhile");
      assertThat(look.figures()).isEqualTo(earlier.figures());
      assertThat(after.step()).isEqualTo(before.step());

      clock.move(Duration.ofDays(30));
      assertThat(desk.reviews().text(unsealed(desk))).isEqualTo(text);
      assertThat(desk.reviews().text(before)).isEqualTo(text);
      assertThat(desk.reviews().html(after, false)).contains(SAME);
      assertThat(unsealed(desk).entries()).hasSize(after.entries().size());
    }
    try (Desk again = old()) {
      assertThat(again.reviews().text(unsealed(again))).contains(SAME);
    }
  }

  @Test
  void aDataPackageTellsTheSameAndReadingItWritesNothing() throws Exception {
    try (Desk desk = old()) {
      Map<String, byte[]> files = desk.reviews().export(unsealed(desk));
      int entries = unsealed(desk).entries().size();
      assertThat(PackageReview.of(files).text()).contains(SAME);
      assertThat(unsealed(desk).entries()).hasSize(entries);
    }
  }

  @Test
  void aFindingThatReadsOtherwiseIsDatedBesideTheEarlierOne() throws Exception {
    try (Desk desk = old()) {
      SessionState state = unsealed(desk);
      FindingSeenAgain other =
          new FindingSeenAgain(
              Edition.CURRENT,
              false,
              Edition.FIRST,
              "not settled",
              Map.of("p", new java.math.BigDecimal("0.08")));
      AskedAgain.done(
          desk.sessions().act(state.id(), s -> blindlap.session.Outcome.accepted(other)));
      assertThat(desk.reviews().text(unsealed(desk)))
          .contains(
              "Under method 1: p = .080 (worked out again at the first look under another method,"
                  + " 2026-12-01 09:00 UTC; no record was kept at the opening). The finding above"
                  + " is by method 3.",
              SAME.replace("found the same", "found something else"));
    }
  }

  @Test
  void whereNothingCanBeWrittenTheFindingIsReadNevertheless() throws Exception {
    try (Desk desk = old()) {
      SessionState state = unsealed(desk);
      try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + file());
          Statement held = other.createStatement()) {
        held.execute("BEGIN IMMEDIATE");
        assertThat(desk.reviews().text(state))
            .contains(
                "Opened under method 1; when it is first looked at under method 3 could not be"
                    + " written down in this notebook.")
            .anyMatch(line -> line.contains("0.4 to 4.7 s"));
        held.execute("ROLLBACK");
      } catch (SQLException e) {
        throw new AssertionError(e);
      }
      assertThat(unsealed(desk).seenAgain()).isEmpty();
      assertThat(desk.reviews().text(unsealed(desk))).contains(SAME);
    }
  }

  @Test
  void aSessionUnsealedUnderThisMethodSaysNothingOfLooks() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 11)) {
      new AskedAgain(day).unsealed(day.id(), day.phrase(), 3);
      int entries = day.state().entries().size();
      assertThat(day.desk().reviews().text(day.state()))
          .noneMatch(line -> line.contains("looked at under method"));
      assertThat(day.state().entries()).hasSize(entries);
    }
  }
}

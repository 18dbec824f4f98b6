package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.review.Edition;
import blindlap.review.RecordedFinding;
import blindlap.seal.SealParameters;
import blindlap.seal.SealingSources;
import blindlap.session.Fact;
import blindlap.session.Outcome;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.store.SqliteNotebook;
import blindlap.wording.EditionWords;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A finding is what it was when the seal was opened, or both are said. */
class EarlierMethodTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-12-01T09:00:00Z"), ZoneId.of("Europe/Vienna"));

  @TempDir Path folder;

  /** The notebook that the program of version 2 left: one question three times. */
  private Desk old() throws IOException {
    Path file = folder.resolve("notebook.blindlap");
    try (InputStream in =
        EarlierMethodTest.class.getResourceAsStream("/blindlap/store/notebook-2.blindlap")) {
      Files.copy(in, file);
    }
    return new Desk(
        SqliteNotebook.open(file, new byte[16], CLOCK.instant()),
        CLOCK,
        SealingSources.allFrom(count -> new byte[count]),
        new SealParameters(1),
        count -> new byte[count]);
  }

  private static SessionState session(Desk desk, int place) {
    SessionId id = desk.notebook().sessions().get(place);
    return desk.sessions().state(id).orElseThrow();
  }

  private static SessionState recorded(Desk desk, SessionState state, Fact.FindingRecorded fact) {
    AskedAgain.done(desk.sessions().act(state.id(), s -> Outcome.accepted(fact)));
    return desk.sessions().state(state.id()).orElseThrow();
  }

  @Test
  void aSessionUnsealedBeforeFindingsWereRecordedIsOfTheFirstEditionAndReadsAsItDid()
      throws Exception {
    try (Desk desk = old()) {
      SessionState first = session(desk, 2);
      Reviews reviews = desk.reviews();
      assertThat(reviews.beside(first).unsealed().orElseThrow())
          .satisfies(
              found -> {
                assertThat(found.edition()).isEqualTo(Edition.FIRST);
                assertThat(found.source()).isEqualTo(RecordedFinding.Source.AGAIN);
                assertThat(found.verdict()).contains("real and worthwhile");
                assertThat(found.figure("p").orElseThrow()).isEqualTo(0.04);
              });
      assertThat(reviews.text(first)).noneMatch(line -> line.contains("Under method"));
      assertThat(reviews.text(first).get(1)).contains("0.4 to 4.7 s", "1.1 to 4.3 s");
      assertThat(reviews.html(first, false)).contains("by method 3; opened under method 1.");
      assertThat(reviews.json(first)).contains("\"edition\" : 3", "\"source\" : \"again\"");

      SessionState second = session(desk, 1);
      assertThat(reviews.text(second).get(2))
          .isEqualTo(
              "Repeat decided after seeing a result: session "
                  + first.id().brief()
                  + " of 2026-11-14 was opened before this one was committed.");
      assertThat(reviews.text(first))
          .contains("Other sessions of this question in this notebook: 2.")
          .anyMatch(line -> line.contains("riding; primary measure lap time; still sealed."));
    }
  }

  @Test
  void whereAnotherMethodGaveOtherFiguresBothAreSaidWithTheTimeOfTheRecord() throws Exception {
    try (Desk desk = old()) {
      Fact.FindingRecorded other =
          new Fact.FindingRecorded(
              7,
              "not settled",
              Map.of(
                  "estimate", new BigDecimal("-2.9"),
                  "low_95", new BigDecimal("-4.7"),
                  "high_95", new BigDecimal("0.4"),
                  "low_90", new BigDecimal("-4.3"),
                  "high_90", new BigDecimal("-1.1"),
                  "p", new BigDecimal("0.08")));
      SessionState first = recorded(desk, session(desk, 2), other);
      String line = desk.reviews().text(first).get(2);
      assertThat(line)
          .startsWith("Under method 7: not settled; Shock L was 2.9 s a lap faster than Shock K,")
          .contains(
              "90 % interval 1.1 to 4.3 s, p = .080 (recorded at the opening, 2026-12-01 09:00"
                  + " UTC)")
          .endsWith("The finding above is by method 3.");
      assertThat(desk.reviews().html(first, false)).contains("Under method 7: not settled;");
      Map<String, byte[]> files = desk.reviews().export(first);
      assertThat(PackageReview.of(files).text()).isEqualTo(desk.reviews().text(first));
    }
  }

  @Test
  void aRecordWithTodaysFiguresAddsNoLineAndOfTwoRecordsTheFirstStands() throws Exception {
    try (Desk desk = old()) {
      SessionState first = session(desk, 2);
      Fact.FindingRecorded same = RecordedFinding.today(Reviews.day(first)).fact();
      SessionState now = recorded(desk, first, same);
      assertThat(desk.reviews().text(now)).noneMatch(line -> line.contains("Under method"));
      now = recorded(desk, now, new Fact.FindingRecorded(9, null, Map.of()));
      assertThat(now.recordedFinding()).contains(same);
      assertThat(now.notApplied()).hasSize(1);
    }
  }

  @Test
  void aPThatTheFirstMethodPrintedThoughTooManyValuesWereMissingStandsBeside() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 11)) {
      AskedAgain again = new AskedAgain(day);
      again.ride(day.id(), day.phrase(), 3, 5);
      AskedAgain.done(day.desk().keys().unseal(day.state(), day.phrase()));
      SessionState now = day.state();
      assertThat(now.recordedFinding().orElseThrow().figures()).doesNotContainKey("p");
      // As the program before would have left it: without the entry that came with the opening.
      SessionState before = SessionState.of(now.entries().subList(0, now.entries().size() - 1));
      RecordedFinding first =
          RecordedFinding.atUnsealing(before, Reviews.day(before)).orElseThrow();
      assertThat(first.edition()).isEqualTo(Edition.FIRST);
      assertThat(first.figure("p")).isPresent();
      assertThat(first.verdict()).isEmpty();
      assertThat(
              new EditionWords(now.plan()).beside(first, RecordedFinding.today(Reviews.day(now))))
          .get()
          .asString()
          .startsWith("Under method 1: no verdict;")
          .contains("p = ", "(worked out again, no record was kept)");
      assertThat(desk(day).text(now)).noneMatch(line -> line.contains("Under method"));
    }
  }

  private static Reviews desk(TestDay day) {
    return day.desk().reviews();
  }

  @Test
  void openingASealWritesDownWhatIsFoundInTheSameWriting() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 11)) {
      AskedAgain again = new AskedAgain(day);
      again.ride(day.id(), day.phrase(), 3);
      assertThat(day.state().recordedFinding()).isEmpty();
      Sessions.Result.Done done =
          (Sessions.Result.Done) day.desk().keys().unseal(day.state(), day.phrase());
      assertThat(done.written())
          .extracting(stored -> stored.entry().fact().getClass().getSimpleName())
          .isEqualTo(List.of("SealOpened", "FindingRecorded"));
      Fact.FindingRecorded kept = day.state().recordedFinding().orElseThrow();
      RecordedFinding today = RecordedFinding.today(day.desk().reviews().finding(day.state()));
      assertThat(kept.edition()).isEqualTo(Edition.CURRENT);
      assertThat(kept.verdict()).isEqualTo("real and worthwhile");
      Map<String, Double> figures = new LinkedHashMap<>();
      kept.figures().forEach((name, figure) -> figures.put(name, figure.doubleValue()));
      today
          .figures()
          .forEach((name, figure) -> assertThat(figures).containsEntry(name, figure.doubleValue()));
      assertThat(figures).hasSize(6);
    }
  }
}

package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.desk.day.DayResult;
import blindlap.desk.day.LapTable;
import blindlap.review.NoiseDay;
import blindlap.review.NoiseRecord;
import blindlap.review.QuestionHistory;
import blindlap.review.RecordedFinding;
import blindlap.seal.SealParameters;
import blindlap.session.GuessWords;
import blindlap.session.SessionState;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.stats.compare.LevelMeans;
import blindlap.stats.compare.Trend;
import blindlap.store.SqliteFiles;
import blindlap.store.SqliteNotebook;
import blindlap.wording.HistoryWords;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A steps day wherever a session goes: noise book, list, history, exchange, paper keyed in. */
class StepsDayEverywhereTest {
  /** So much that a flat day rules it out from end to end. */
  private static final String FLAT =
      StepsTestDay.NINE.replace("worthwhile: 0.5}", "worthwhile: 6}");

  @TempDir Path folder;

  private static List<NoiseRecord> records(TestDay day) {
    return day.desk().history().records("R. Lind", "Quarry loop");
  }

  @Test
  void theNoiseBookHasItsNoiseAfterDriftAndLevelsOnceItIsUnsealedAndNothingBefore() {
    TreeSet<String> orders = new TreeSet<>();
    for (int seed = 1; seed < 4; seed++) {
      try (TestDay day = new TestDay(folder, StepsTestDay.NINE, seed)) {
        AskedAgain again = new AskedAgain(day);
        again.ride(day.id(), day.phrase(), 1.5);
        orders.add(day.order());
        assertThat(records(day)).as("while it is sealed").isEmpty();
        AskedAgain.done(day.desk().keys().unseal(day.state(), day.phrase()));

        NoiseRecord lapTime = records(day).get(0);

        Trend trend = day.desk().reviews().finding(day.state()).trend().orElseThrow();
        LevelMeans means = trend.means().orElseThrow();
        assertThat(lapTime.measure().name()).isEqualTo("lap time");
        assertThat(lapTime.days()).hasSize(1);
        NoiseDay told = lapTime.days().get(0);
        assertThat(told.source()).isEqualTo(NoiseDay.Source.STEPS_DAY);
        assertThat(lapTime.pooled().orElseThrow().sd()).isCloseTo(means.noiseSd(), within(1e-9));
        assertThat(lapTime.pooled().orElseThrow().df()).isEqualTo(means.df());
        assertThat(day.desk().history().json(day.desk().history().everywhere()))
            .contains("\"source\" : \"steps day\"");
        assertThat(
                day.desk()
                    .history()
                    .suggestNoise("R. Lind", "Quarry loop", lapTime.measure())
                    .orElseThrow()
                    .df())
            .isEqualTo(means.df());
      }
    }
    assertThat(orders)
        .as("the orders differ, or nothing before unsealing is shown by this")
        .hasSizeGreaterThan(1);
  }

  @Test
  void stepsDaysOfOneSettingAskOneQuestionAtAnyLevelsAndNeverThatOfAComparison() {
    try (TestDay day = new TestDay(folder, FLAT, 3)) {
      AskedAgain again = new AskedAgain(day);
      again.unsealed(again.commit(TestDay.EIGHT), 3);
      SessionState first = again.unsealed(day.id(), day.phrase(), 0);
      String levels = FLAT.replace("levels: [4, 7, 10]", "levels: [5, 8, 12]");
      SessionState second = again.unsealed(again.commit(levels), 0);
      SessionState other =
          again.unsealed(again.commit(FLAT.replace("setting: rebound", "setting: compression")), 0);

      QuestionHistory history = day.desk().reviews().beside(second).history();

      assertThat(history.past())
          .extracting(QuestionHistory.Past::session)
          .containsExactly(first.id().text(), other.id().text());
      assertThat(history.past().get(0).alike()).isTrue();
      assertThat(history.past().get(0).knownBefore()).isTrue();
      assertThat(history.past().get(1).alike()).as("another setting, the same words").isFalse();
      assertThat(history.past().get(0).verdictText()).contains("no worthwhile trend");
      assertThat(HistoryWords.lines(history).get(0)).endsWith("lap time; no worthwhile trend.");
      assertThat(day.desk().reviews().json(second))
          .contains("\"verdict\" : \"no worthwhile trend\"", "\"trend\" : true");
    }
  }

  @Test
  void theListFindsItBySettingAndLevelAndKeepsItsVerdict() {
    try (TestDay day = new TestDay(folder, FLAT, 3)) {
      SessionList list = day.desk().sessionList();
      for (String words : List.of("rebound", "shock k 7", "steps day", "10 clicks")) {
        assertThat(list.find(words)).as(words).extracting(s -> s.id()).containsExactly(day.id());
      }
      assertThat(list.find("compression")).isEmpty();
      new AskedAgain(day).unsealed(day.id(), day.phrase(), 0);
      assertThat(list.told("", 9)).hasSize(1);
      assertThat(list.told("", 9).get(0).verdict()).startsWith("no worthwhile ");
      assertThat(list.find("no worthwhile")).hasSize(1);
    }
  }

  @Test
  void whatWasFoundAtUnsealingIsRecordedAndTheFirstEditionHasNoTrend() {
    try (TestDay day = new TestDay(folder, FLAT, 3)) {
      SessionState state = new AskedAgain(day).unsealed(day.id(), day.phrase(), 0);
      RecordedFinding found = RecordedFinding.atUnsealing(state, Reviews.day(state)).orElseThrow();
      assertThat(found.verdict()).contains("no worthwhile trend");
      assertThat(found.figures()).containsKeys("estimate", "p", "low_95", "high_90");
      assertThat(day.desk().reviews().text(state))
          .noneMatch(line -> line.contains("first edition") || line.contains("was found"));
    }
  }

  @Test
  void itGoesSealedIntoAnotherNotebookIsRiddenThereAndComesBackTheSame() {
    try (TestDay day = new TestDay(folder, StepsTestDay.NINE, 4)) {
      byte[] id = new byte[16];
      Arrays.fill(id, (byte) 9);
      try (Desk other =
          new Desk(
              SqliteNotebook.open(folder.resolve("other.blindlap"), id, day.clock().instant()),
              day.clock(),
              FixedSources.order(5),
              new SealParameters(1),
              FixedSources.stream(8))) {
        bring(day, day.desk(), "day-4.blindlap", other, "other.blindlap", "out.session.txt");
        assertThat(other.sessions().state(day.id()).orElseThrow().plan())
            .isEqualTo(day.state().plan());
        new AskedAgain(day).unsealed(day.id(), day.phrase(), 2);
        bring(day, day.desk(), "day-4.blindlap", other, "other.blindlap", "back.session.txt");

        SessionState there = other.sessions().state(day.id()).orElseThrow();
        assertThat(there.entries()).isEqualTo(day.state().entries());
        assertThat(other.reviews().text(there)).isEqualTo(day.desk().reviews().text(day.state()));
        assertThat(other.sessionList().find("rebound")).hasSize(1);
        assertThat(other.history().records("R. Lind", "Quarry loop")).isEqualTo(records(day));
      }
    }
  }

  @Test
  void aBackupOfItIsSoundAndTellsTheSame() {
    try (TestDay day = new TestDay(folder, FLAT, 4)) {
      new AskedAgain(day).unsealed(day.id(), day.phrase(), 0);
      SqliteFiles sqlite = new SqliteFiles(day.clock(), () -> new byte[16]);
      Path backup = new SafeKeeping(sqlite, folder.resolve("day-4.blindlap")).backUp();
      Path fresh = folder.resolve("fresh.blindlap");
      new SafeKeeping(sqlite, backup).recover(fresh);
      try (Desk again =
          new Desk(
              SqliteNotebook.open(fresh, new byte[16], day.clock().instant()),
              day.clock(),
              FixedSources.order(5),
              new SealParameters(1),
              FixedSources.stream(8))) {
        SessionState there = again.sessions().state(day.id()).orElseThrow();
        assertThat(again.reviews().text(there)).isEqualTo(day.desk().reviews().text(day.state()));
        assertThat(again.sessionList().find("rebound 10 clicks")).hasSize(1);
      }
    }
  }

  @Test
  void itsDataPackageIsOpenedAgainAndSaysTheSame() {
    try (TestDay day = new TestDay(folder, FLAT, 4)) {
      AskedAgain again = new AskedAgain(day);
      again.unsealed(day.id(), day.phrase(), 0);
      String levels = FLAT.replace("levels: [4, 7, 10]", "levels: [5, 8, 12]");
      SessionState second = again.unsealed(again.commit(levels), 2);
      Map<String, byte[]> files = day.desk().reviews().export(second);
      assertThat(PackageReview.of(files).text()).isEqualTo(day.desk().reviews().text(second));
      assertThat(PackageReview.of(files).json()).isEqualTo(day.desk().reviews().json(second));
      assertThat(new String(files.get("history.csv"), StandardCharsets.UTF_8))
          .contains(",lap time,found,no worthwhile trend,true,true");
    }
  }

  @Test
  void aPhoneSaysTheEndOfAStintAndItStandsInTheDay() {
    try (TestDay day = new TestDay(folder, StepsTestDay.NINE, 4)) {
      day.desk().riderDays().handedOver(day.id(), 1);
      PhoneHand phone = new PhoneHand(day, 1, Duration.ofMinutes(3));
      phone
          .say(a -> a.score(day.id(), new LapId(1, 1), "grip in the rocks", BigDecimal.TEN, false))
          .send();
      assertThat(day.state().lap(new LapId(1, 1)).orElseThrow().values())
          .containsEntry("grip in the rocks", BigDecimal.TEN);
      phone.say(a -> a.guess(day.id(), 1, new Guess(1, Guess.Sureness.HUNCH, ""))).send();
      assertThat(GuessWords.text(day.state().plan(), day.state().guesses().get(1)))
          .isEqualTo("high");
      // There are three levels, but only two ends to guess.
      phone.say(a -> a.guess(day.id(), 1, new Guess(2, Guess.Sureness.HUNCH, ""))).send();
      assertThat(day.state().guesses().get(1).setup()).isEqualTo(1);
      Guess.Sureness sure = Guess.Sureness.CERTAIN;
      assertThat(day.desk().riderDays().guess(day.id(), 2, new Guess(2, sure, "")))
          .isInstanceOf(DayResult.Refused.class);
      assertThat(day.state().guesses()).containsOnlyKeys(1);
      assertThat(day.desk().riderDays().guess(day.id(), 2, new Guess(0, sure, "")))
          .isInstanceOf(DayResult.Done.class);
    }
  }

  private void bring(
      TestDay day, Desk from, String fromFile, Desk to, String toFile, String through) {
    SqliteFiles sqlite = new SqliteFiles(day.clock(), () -> new byte[16]);
    Path file = folder.resolve(through);
    from.exchange(new SafeKeeping(sqlite, folder.resolve(fromFile))).write(day.id(), file);
    assertThat(to.exchange(new SafeKeeping(sqlite, folder.resolve(toFile))).bringIn(file).refused())
        .isEmpty();
  }

  @Test
  void paperIsKeyedInWithGuessesOfTheEndAndALetterIsRefusedWhole() {
    try (TestDay day = new TestDay(folder, StepsTestDay.NINE, 2)) {
      LapTable empty = LapTable.empty(day.state().day());
      DayResult refused =
          day.desk().keyingIn().record(day.state().day(), typed(empty, "B"), List.of());
      assertThat(refused).isInstanceOf(DayResult.Refused.class);
      assertThat(day.state().lapsRidden()).isZero();

      DayResult result =
          day.desk().keyingIn().record(day.state().day(), typed(empty, "high"), List.of());
      assertThat(result).isInstanceOf(DayResult.Done.class);
      assertThat(day.state().lapsRidden()).isEqualTo(2);
      assertThat(day.state().guesses()).hasSize(2);
    }
  }

  private static LapTable typed(LapTable empty, String guess) {
    List<List<String>> rows = new ArrayList<>(empty.rows());
    for (int i = 0; i < 2; i++) {
      List<String> row = new ArrayList<>(rows.get(i));
      row.set(empty.columns().indexOf("lap time"), "1:3" + i + ".5");
      row.set(empty.columns().indexOf("guess"), guess);
      rows.set(i, row);
    }
    return new LapTable(empty.columns(), rows);
  }
}

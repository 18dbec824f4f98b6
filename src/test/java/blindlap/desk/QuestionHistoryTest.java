package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.Plan;
import blindlap.plan.Plans;
import blindlap.plan.TellingRuns;
import blindlap.review.QuestionHistory;
import blindlap.seal.SessionKind;
import blindlap.session.LifeCommands;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.wording.HistoryWords;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How often a question was asked is said wherever its answer is, and nothing sealed with it. */
class QuestionHistoryTest {
  private static final String REPEAT = "Repeat decided after seeing a result: session ";

  @TempDir Path folder;

  @Test
  void aRepeatIsSaidUnderItsOwnVerdictOnEverySurfaceWhateverItsPrimary() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 11)) {
      AskedAgain again = new AskedAgain(day);
      SessionState first = again.unsealed(day.id(), day.phrase(), 3);
      SessionState second = again.unsealed(again.commit(AskedAgain.byGrip()), 0);
      Reviews reviews = day.desk().reviews();

      String line =
          "2026-11-14, session "
              + first.id().brief()
              + ": unsealed; primary measure lap time; real and worthwhile.";
      List<String> text = reviews.text(second);
      assertThat(text.get(2)).startsWith(REPEAT + first.id().brief() + " of 2026-11-14");
      assertThat(text).contains("Other sessions of this question in this notebook: 1.", line);
      assertThat(reviews.html(second, false)).contains(REPEAT + first.id().brief(), line);
      Map<String, byte[]> files = reviews.export(second);
      assertThat(text(files, "README.md")).contains(REPEAT + first.id().brief());
      assertThat(text(files, "history.csv").lines().skip(1).toList())
          .containsExactly(
              first.id().text()
                  + ",2026-11-14,R. Lind,Quarry loop,unsealed,,lap time,found,real and"
                  + " worthwhile,true,true");
      assertThat(reviews.json(second)).contains("\"known_before\" : true");
      assertThat(PackageReview.of(files).text()).isEqualTo(text);
      assertThat(PackageReview.of(files).json()).isEqualTo(reviews.json(second));

      assertThat(reviews.text(first)).noneMatch(said -> said.startsWith(REPEAT));
      assertThat(reviews.text(first)).anyMatch(said -> said.contains(second.id().brief()));
      SessionList list = day.desk().sessionList();
      list.keepVerdicts(9);
      assertThat(list.find("repeat decided")).extracting(s -> s.id()).containsExactly(second.id());
    }
  }

  @Test
  void theCommitIsToldBeforeAnythingIsDrawn() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 11)) {
      Plan plan = AskedAgain.plan(AskedAgain.byGrip());
      String sealed = String.join("\n", day.desk().planning().askedBefore(plan));
      assertThat(sealed).contains("committed; primary measure lap time; still sealed.");
      assertThat(sealed).doesNotContain("repeat");
      new AskedAgain(day).unsealed(day.id(), day.phrase(), 3);
      assertThat(day.desk().planning().askedBefore(plan))
          .last()
          .asString()
          .startsWith("This would be a repeat decided after seeing a result: session ");
      assertThat(day.desk().notebook().sessions()).hasSize(1);
      Plan elsewhere = AskedAgain.plan(AskedAgain.byGrip().replace("Quarry loop", "Beech run"));
      assertThat(day.desk().planning().askedBefore(elsewhere))
          .containsExactly("No other session of this question is in this notebook.");
    }
  }

  @Test
  void capitalsAndBlanksMakeNoOtherRiderOrTrailAndAnotherSetupMakesAnotherQuestion() {
    Plan plan = AskedAgain.plan(TestDay.EIGHT);
    Plan same =
        AskedAgain.plan(
            TestDay.EIGHT.replace("R. Lind", "\" r. LIND\"").replace("Quarry l", "quarry L"));
    Plan other = AskedAgain.plan(TestDay.EIGHT.replace("name: Shock L", "name: Shock M"));
    assertThat(QuestionHistory.alike(plan, same)).isTrue();
    assertThat(QuestionHistory.alike(plan, other)).isFalse();
  }

  @Test
  void tellingRunsAskTheSameAtTheSameLevelsOfTheSameSettingHoweverTheyAreTyped() {
    Plan plan = TellingRuns.levels();
    String typed = "levels: [13.0, 9.0], least: 2, most: 16";
    Plan same = Plans.with(TellingRuns.levels("task: duo-trio", typed));
    Plan wider = Plans.with(TellingRuns.levels("task: triangle", "levels: [9, 15], most: 16"));
    Plan rebound =
        Plans.with(
            TellingRuns.levels("task: triangle", "levels: [9, 13], least: 2, most: 16")
                .replace("setting: compression", "setting: rebound"));
    assertThat(QuestionHistory.alike(plan, same)).isTrue();
    assertThat(QuestionHistory.alike(plan, wider)).isFalse();
    assertThat(QuestionHistory.alike(plan, rebound)).isFalse();
  }

  @Test
  void aNullRunIsListedAsSuchAndMakesNoRepeatAndAnAbandonedSessionSaysWhy() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 11)) {
      AskedAgain again = new AskedAgain(day);
      AskedAgain.done(
          day.desk().sessions().act(day.id(), s -> new LifeCommands(s).abandon("snow")));
      again.unsealed(again.commit(AskedAgain.byGrip(), SessionKind.nullRun(0)), 0);
      SessionState third = again.unsealed(again.commit(TestDay.EIGHT), 3);
      List<String> lines = HistoryWords.lines(day.desk().reviews().beside(third).history());
      assertThat(lines.get(0)).contains("abandoned (snow); primary measure lap time; still sealed");
      assertThat(lines.get(1)).contains("grip in the rocks; null run, one setup throughout.");
      assertThat(day.desk().reviews().beside(third).history().repeats()).isEmpty();
    }
  }

  @Test
  void neitherASealedSessionNorAnUnfinishedSeriesIsToldWhateverTheOrders() throws Exception {
    TreeSet<String> said = new TreeSet<>();
    TreeSet<String> ended = new TreeSet<>();
    TreeSet<String> keys = new TreeSet<>();
    for (int seed = 0; seed < 5; seed++) {
      Path own = Files.createDirectories(folder.resolve("n" + seed));
      try (SeriesDays days = new SeriesDays(own, seed)) {
        List<String> lines = new ArrayList<>();
        SessionId one = days.ride(new SeriesDays.Day("R. Lind", "2026-10-03", 2, 0, 0.5, true));
        SessionId two = days.ride(new SeriesDays.Day("R. Lind", "2026-10-10", 2, 0, 0.5, true));
        QuestionBook book = days.desk().questions();
        lines.addAll(all(book.of(days.state(two))));
        days.unseal(one);
        lines.addAll(all(book.of(days.state(two))));
        lines.addAll(all(book.before(days.state(two).plan())));
        assertThat(book.of(days.state(two)).past())
            .extracting(QuestionHistory.Past::told)
            .containsExactly(QuestionHistory.Told.SERIES);
        said.add(String.join("\n", lines));
        keys.add(days.state(one).openKey().orElseThrow().order());
        days.unseal(two);
        ended.add(String.join("\n", all(book.of(days.state(two)))));
      }
    }
    assertThat(keys).as("the orders differ, or this shows nothing").hasSizeGreaterThan(1);
    assertThat(said).hasSize(1);
    assertThat(said.first()).contains("still sealed", "before its series is finished");
    assertThat(String.join("\n", ended)).doesNotContain("before its series is finished");
  }

  private static List<String> all(QuestionHistory history) {
    List<String> lines = new ArrayList<>(HistoryWords.ahead(history));
    history.past().forEach(past -> lines.add(past.toString()));
    return lines;
  }

  private static String text(Map<String, byte[]> files, String name) {
    return new String(files.get(name), StandardCharsets.UTF_8);
  }
}

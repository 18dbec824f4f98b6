package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.session.SessionState;
import blindlap.wording.TrendWords;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The report of a steps day: its levels, pairs, limits and handling. */
class StepsReportTest {
  private @TempDir(factory = RamFolder.class) Path folder;

  private record Written(TrendWords words, String page) {
    /** From one heading to another. */
    String between(String from, String to) {
      int at = page.indexOf("id=\"" + from + "\"");
      int end = page.indexOf("id=\"" + to + "\"", at);
      assertThat(at).as(from).isPositive();
      assertThat(end).as(to).isGreaterThan(at);
      return page.substring(at, end);
    }
  }

  private Written written(String stepsDay, int stints) {
    try (TestDay day = new TestDay(folder, StepsTestDay.plan(stepsDay, stints), 4)) {
      SessionState state = StepsTestDay.ride(day, stints, stint -> 180 + stint * 7 % 5);
      byte[] html =
          day.desk().reviews().report(state, false).entrySet().stream()
              .filter(file -> file.getKey().endsWith(".html"))
              .findFirst()
              .orElseThrow()
              .getValue();
      return new Written(
          TrendWords.of(day.desk().reviews().finding(state)).orElseThrow(),
          new String(html, StandardCharsets.UTF_8));
    }
  }

  @Test
  void threeLevelsStandWholeOnTheFirstPages() {
    Written report = written("levels: [4, 7, 10], least: 2, most: 16", 12);

    assertThat(report.page().indexOf(report.words().bendTitle()))
        .isPositive()
        .isLessThan(report.page().indexOf("id=\"plan\""));
    assertThat(report.words().levels()).hasSize(3);
    String levels = report.between("levels", "pairs");
    report
        .words()
        .levels()
        .forEach(level -> assertThat(levels).contains("<td>" + level.mean() + "</td>"));
    String pairs = report.between("pairs", "fixed");
    assertThat(report.words().pairs()).hasSize(3);
    report
        .words()
        .pairs()
        .forEach(pair -> assertThat(pairs).contains("<td>" + pair.levels() + "</td>"));
    assertThat(report.page()).doesNotContain("id=\"pairs-all\"").contains("id=\"trend\"");
    assertThat(report.between("setup-one", "measures"))
        .contains("One setup, Shock K: rebound at 4, 7, 10 clicks")
        .contains("2 to 16 clicks")
        .contains("20 clicks at each of ")
        .doesNotContain("A: ");
  }

  @Test
  void thePairsOfSixLevelsStandUnderAnalysis() {
    Written report = written("levels: [3, 5, 7, 9, 11, 14]", 18);

    assertThat(report.words().pairs()).hasSize(15);
    assertThat(report.between("pairs", "fixed"))
        .contains(" of 15 pairs of levels are told apart")
        .doesNotContain("<td>3 and 5</td>");
    List<String> all = report.words().pairs().stream().map(TrendWords.Pair::levels).toList();
    String analysis = report.between("pairs-all", "others-words");
    assertThat(all).allSatisfy(pair -> assertThat(analysis).contains("<td>" + pair + "</td>"));
    assertThat(report.between("setup-one", "measures"))
        .contains("No limits of the maker were typed in");
  }
}

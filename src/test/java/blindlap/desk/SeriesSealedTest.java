package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.fault.Problem;
import blindlap.review.SeriesFinding;
import blindlap.session.day.SessionId;
import blindlap.wording.SeriesWords;
import blindlap.wording.day.Problems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Before its end a series tells nothing of an order: not in words, numbers, or a report. */
class SeriesSealedTest {
  private static final SeriesDays.Day FIRST =
      new SeriesDays.Day("R. Lind", "2026-10-03", 2, 0, 0.7, false);
  private static final SeriesDays.Day SECOND =
      new SeriesDays.Day("R. Lind", "2026-10-10", 2, 0, 0.7, false);

  @TempDir Path folder;

  private String everything(Desk desk) {
    List<String> all = new ArrayList<>();
    SeriesFinding finding = desk.series().finding(SeriesDays.SERIES).orElseThrow();
    all.addAll(new SeriesWords(finding).lines());
    all.add(desk.series().json(SeriesDays.SERIES).orElseThrow());
    desk.series().all().forEach(line -> all.add(line.toString()));
    desk.series().repeats().forEach(repeat -> all.add(repeat.toString()));
    all.addAll(desk.series().elsewhere(finding));
    all.add(desk.seriesReports().of(SeriesDays.SERIES, false).toString());
    return String.join("\n", all);
  }

  @Test
  void whateverTheOrdersWereASealedSeriesSaysTheSame() throws Exception {
    TreeSet<String> said = new TreeSet<>();
    TreeSet<String> orders = new TreeSet<>();
    for (int seed = 0; seed < 6; seed++) {
      Path own = Files.createDirectories(folder.resolve("n" + seed));
      try (SeriesDays days = new SeriesDays(own, seed)) {
        SessionId first = days.ride(FIRST);
        days.commit(SECOND);
        said.add(everything(days.desk()));
        orders.add(days.state(first).sealedKey().toString());
      }
    }
    assertThat(said).hasSize(1);
    assertThat(said.first()).doesNotContain("faster", "interval 0");
  }

  @Test
  void whatIsUnsealedFirstTellsNothingOfTheOthersEither() {
    try (SeriesDays days = new SeriesDays(folder, 1)) {
      SessionId first = days.ride(new SeriesDays.Day("R. Lind", "2026-10-03", 2, -2, 0.5, true));
      SessionId second = days.ride(new SeriesDays.Day("R. Lind", "2026-10-10", 2, -2, 0.5, true));
      assertThat(days.unseal(first)).isInstanceOf(Sessions.Result.Done.class);
      SeriesFinding half = days.desk().series().finding(SeriesDays.SERIES).orElseThrow();
      assertThat(half.progress().stage()).isEqualTo(SeriesFinding.Stage.READY);
      assertThat(half.these()).isEmpty();
      assertThat(half.riders()).isEmpty();
      assertThat(half.parts()).allSatisfy(part -> assertThat(part.estimate()).isEmpty());
      assertThat(everything(days.desk())).doesNotContain("faster");
      assertThat(refusal(days)).contains("1 of 2 sessions are opened", "Nothing was written");
      days.unseal(second);
      assertThat(everything(days.desk())).contains("Shock L was", "faster than Shock K");
    }
  }

  private static String refusal(SeriesDays days) {
    SeriesReports.Result result = days.desk().seriesReports().of(SeriesDays.SERIES, false);
    List<Problem> problems = ((SeriesReports.Result.Refused) result).problems();
    return String.join(" ", Problems.sentences(problems));
  }

  @Test
  void theReportHasAnswerPictureSessionsWeightsAndRequestsOfSeveralRiders() {
    try (SeriesDays days = new SeriesDays(folder, 2)) {
      days.riders();
      days.commit(new SeriesDays.Day("T. Falk", "2026-11-20", 6, 0, 0.7, false));
      SeriesReports.Result result = days.desk().seriesReports().of(SeriesDays.SERIES, false);
      Map<String, byte[]> files = ((SeriesReports.Result.Made) result).files();
      assertThat(files.keySet()).containsExactly("series-k-or-l.html", "series-k-or-l.pdf");
      String html =
          new String(files.get("series-k-or-l.html"), java.nio.charset.StandardCharsets.UTF_8);
      assertThat(html)
          .contains("for riders in general, from 5 riders", "These riders on these days:")
          .contains("<svg", "J. Brand", "% of the weight on these days")
          .contains("repeat decided after seeing a result, not pooled")
          .contains("pool-riders", "approves no part", "Fingerprints")
          .doesNotContain("http");
      assertThat(files.get("series-k-or-l.pdf")).startsWith("%PDF".getBytes());
    }
  }

  @Test
  void threeSetupsGiveTheAgreementOfRidersAndNoVerdict() {
    try (SeriesDays days = new SeriesDays(folder, 3)) {
      for (String rider : List.of("R. Lind", "M. Oster")) {
        days.ride(
            new SeriesDays.Day(rider, "2026-10-03", 2, -1.5, 0.3, true),
            "[{name: Shock K}, {name: Shock L}, {name: Shock M}]",
            "three-setups",
            18);
      }
      days.unsealAll();
      SeriesFinding finding = days.desk().series().finding(SeriesDays.SERIES).orElseThrow();
      assertThat(finding.noVerdict()).contains(SeriesFinding.NoVerdict.MANY_SETUPS);
      assertThat(new SeriesWords(finding).agreement())
          .anySatisfy(line -> assertThat(line).contains("Kendall's W = 1.00"))
          .contains("R. Lind, best estimate first, not tested: Shock M, Shock L, Shock K.");
      assertThat(days.desk().seriesReports().of(SeriesDays.SERIES, true))
          .isInstanceOf(SeriesReports.Result.Made.class);
    }
  }

  @Test
  void aSeriesOfOneRiderAndOneOfSeveralSayWhatTheyAlwaysSaid() throws Exception {
    try (SeriesDays one = new SeriesDays(Files.createDirectories(folder.resolve("one")), 1);
        SeriesDays riders = new SeriesDays(Files.createDirectories(folder.resolve("more")), 2)) {
      one.oneRider();
      golden("series-of-one-rider", one.desk());
      riders.riders();
      golden("series-of-riders", riders.desk());
    }
  }

  private static void golden(String name, Desk desk) throws Exception {
    SeriesFinding finding = desk.series().finding(SeriesDays.SERIES).orElseThrow();
    String text = String.join("\n", new SeriesWords(finding).lines()) + "\n";
    Path file = Path.of("src", "test", "resources", "blindlap", "golden", name + ".txt");
    if (Boolean.getBoolean("blindlap.write")) {
      Files.writeString(file, text);
    }
    assertThat(text)
        .as("run with -Dblindlap.write=true and read the difference")
        .isEqualTo(Files.readString(file));
  }
}

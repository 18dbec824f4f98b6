package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.GoldenCards;
import blindlap.desk.SampleDays;
import blindlap.desk.SeriesDays;
import blindlap.paper.CardFiles;
import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.review.Analysis;
import blindlap.review.Beside;
import blindlap.review.Finding;
import blindlap.review.StepsDays;
import blindlap.review.TellingAnalysis;
import blindlap.review.TellingRuns;
import blindlap.session.day.SessionId;
import blindlap.stats.compare.Verdict;
import blindlap.stats.tell.Discrimination;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Cards of what no sample session has: other verdicts, four setups, a series, prepared units. */
class InventedCardsTest {
  private static final int MOST_TRIED = 400;

  @TempDir Path folder;

  @Test
  void fourSetupsOfASeriesAtItsEnd() {
    try (SeriesDays days = new SeriesDays(folder, 1)) {
      SessionId first = four(days, "2026-10-03");
      four(days, "2026-10-10");
      days.unsealAll();
      Map<String, byte[]> card = days.desk().reviews().card(days.state(first), false);
      GoldenCards.check("invented-four-setups", card);
      assertThat(GoldenCards.part(card, ".txt"))
          .contains("Shock D", "6 pairs", "series")
          .contains("Ridden blind, order drawn by lot and sealed.");
    }
  }

  private static SessionId four(SeriesDays days, String day) {
    return days.ride(
        new SeriesDays.Day("R. Lind", day, 2, -0.6, 0.5, true),
        "[{name: Shock A}, {name: Shock B}, {name: Shock C}, {name: Shock D}]",
        "four-setups",
        16);
  }

  @ParameterizedTest
  @CsvSource({
    "told-more-often, TWO_CHOICE, 24, 24, 23, 0.5",
    "told-less-often, TRIANGLE, 60, 60, 27, 0.5",
    "told-not-settled, DUO_TRIO, 24, 24, 15, 0.4",
    "told-could-not-show, TRIANGLE, 2, 2, 2, 0.5",
    "told-too-few, DUO_TRIO, 24, 3, 2, 0.5",
  })
  void everyVerdictOfATellingRun(
      String name, Discrimination task, int declared, int answered, int right, double matters) {
    SampleDays.ride(
        "clicks-told-on-alder-bank",
        (desk, state) -> {
          TellingAnalysis sample = desk.reviews().telling(state);
          TellingAnalysis invented =
              new TellingAnalysis(
                  sample.day(),
                  TellingRuns.run(task, declared, answered, right, matters, false),
                  List.of(),
                  List.of(),
                  Optional.empty(),
                  sample.waits(),
                  sample.parity());
          Map<String, byte[]> card = CardFiles.of(state, invented, Beside.NOTHING, false);
          GoldenCards.check("invented-" + name, card);
          assertThat(GoldenCards.part(card, ".txt"))
              .contains(new TellingText(invented).headline().text());
        });
  }

  @ParameterizedTest
  @CsvSource({
    "REAL_AND_WORTHWHILE, 1.5, 0.3",
    "REAL_BUT_SMALL, 0.3, 0.2",
    "NO_WORTHWHILE_DIFFERENCE, 0, 0.3",
    "DIRECTION_KNOWN, 0.8, 0.5",
    "NOT_SETTLED, 0.2, 1.5",
  })
  void everyVerdictOfAStepsDay(Verdict verdict, double effect, double noise) {
    Plan plan =
        StepsDays.plan(
            "unit: clicks from closed, levels: [3, 6, 9], ends: [0, 16]", 3, 12, "lower");
    Finding finding = steps(plan, verdict, effect, noise);
    SampleDays.ride(
        "rebound-on-heron-line",
        (desk, state) -> {
          Map<String, byte[]> card = CardFiles.of(state, finding, Beside.NOTHING, false);
          GoldenCards.check(
              "invented-steps-"
                  + verdict.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'),
              card);
          assertThat(GoldenCards.part(card, ".txt"))
              .contains(new FindingText(finding).headline().text());
        });
  }

  private static Finding steps(Plan plan, Verdict verdict, double effect, double noise) {
    for (long seed = 0; seed < MOST_TRIED; seed++) {
      double[] effects = {0, effect / 2, effect};
      Finding finding =
          Analysis.of(StepsDays.day(plan, effects, noise, new Random(seed * 7919 + 1)));
      if (finding.primary().flatMap(p -> p.verdict()).filter(v -> v == verdict).isPresent()) {
        return finding;
      }
    }
    throw new AssertionError("no invented day gives " + verdict);
  }

  @Test
  void unitsPreparedBeforehand() {
    SampleDays.ride(
        "bearings-on-clay-steps",
        (desk, state) -> {
          for (long seed = 0; seed < MOST_TRIED; seed++) {
            Finding finding =
                Analysis.of(
                    DoubtfulDays.day(new Random(seed), 2, Optional.of(BlindLevel.PREPARED)));
            if (CardWords.of(state, finding, Beside.NOTHING).mark().isEmpty()) {
              Map<String, byte[]> card = CardFiles.of(state, finding, Beside.NOTHING, false);
              GoldenCards.check("invented-prepared", card);
              assertThat(GoldenCards.part(card, ".txt"))
                  .contains("Ridden blind with parts prepared beforehand");
              return;
            }
          }
          throw new AssertionError("something speaks against every invented day");
        });
  }
}

package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.DayAnswer;
import blindlap.plan.DayAnswers;
import blindlap.plan.DayDetail;
import blindlap.plan.Plan;
import blindlap.plan.Plans;
import blindlap.stats.distribution.Interval;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the plan says a day can show. */
class AnswerWordsTest {
  private static final String THREE =
      "setups: [{name: A}, {name: B}, {name: C}]\nprotocol: three-setups\ntimetable: null\n";

  private static AnswerWords words(Plan plan) {
    return new AnswerWords(plan, new DayAnswers().quick(plan));
  }

  @Test
  void aSimulatedFigureLiesInItsPrintedError() {
    Pattern said =
        Pattern.compile("days: ([0-9.]+)\\P{Alnum}s, .* \\(([0-9.]+) to ([0-9.]+)\\P{Alnum}s\\)");
    AnswerWords words = words(Plans.with(""));
    Random random = new Random(4);
    for (int trial = 0; trial < 2000; trial++) {
      double low = Math.exp(4 * random.nextDouble() - 3);
      double high = low * (1 + 0.3 * random.nextDouble());
      double figure = low + random.nextDouble() * (high - low);
      DayAnswer.Point point =
          new DayAnswer.Point(16, DayAnswer.Source.SIMULATION, figure, null, true);
      DayDetail detail =
          new DayDetail(
              2000, point, new Interval(low, high), List.of(), List.of(), Optional.empty());
      Matcher found = said.matcher(words.simulated(detail).orElseThrow());
      assertThat(found.find()).as(words.simulated(detail).orElseThrow()).isTrue();
      assertThat(Double.parseDouble(found.group(1)))
          .isBetween(Double.parseDouble(found.group(2)), Double.parseDouble(found.group(3)));
    }
  }

  @Test
  void aDayOfThreeSetupsSaysAfterEveryBlockWhatIsLeft() {
    Plan plan = Plans.with(THREE + "stints: 18\nnoise: {sd: 0.5}\n");
    List<String> lines = words(plan).cuts(new DayAnswers().left(plan, () -> false).orElseThrow());

    assertThat(lines.get(0)).isEqualTo("Through stint 7 nothing can be shown yet.");
    assertThat(lines.get(1))
        .isEqualTo("If the day ends after stint 8, the smallest possible p is .028.");
    assertThat(lines.get(2)).contains("stint 9", ".028", "seldom told apart");
    assertThat(lines.get(3)).contains("stint 12", "it can show about", "between two setups");
    assertThat(lines.get(4)).contains("stint 15", "it can show about");
    assertThat(lines).last().isEqualTo("Stop no earlier than after stint 12.");
  }

  @Test
  void nineStintsOfThreeSetupsAreSaidAtOnceToShowTooLittle() {
    Plan plan = Plans.with(THREE + "stints: 9\nnoise: {sd: 0.5}\n");
    AnswerWords words = words(plan);
    AnswerWords.Sentence sentence = words.sentence();

    assertThat(sentence.before() + sentence.marked() + sentence.after())
        .startsWith("9 stints can show too little")
        .contains("no difference between two named setups of 3 is large enough");
    assertThat(words.lead()).anyMatch(line -> line.contains("Ride more stints"));
  }

  /** Whoever knows what is on could stop when ahead: what a day ended early shows hangs on why. */
  @ParameterizedTest
  @CsvSource({"open,true", "drawn,true", "masked,true", "prepared,false"})
  void belowPreparedADayEndedEarlyNeedsItsReason(String level, boolean said) {
    String blinding = "blinding: {level: " + level + ", guesses: false}\n";
    Plan plan = Plans.with(blinding);
    List<String> lines = words(plan).cuts(new DayAnswers().left(plan, () -> false).orElseThrow());
    assertThat(lines.stream().anyMatch(l -> l.contains("dark, injury or damage"))).isEqualTo(said);
  }
}

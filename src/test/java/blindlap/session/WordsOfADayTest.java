package blindlap.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import blindlap.plan.Plan;
import blindlap.plan.RandomPlans;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.SessionId;
import blindlap.session.day.Step;
import blindlap.session.day.VoidEvent;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Names, numbers and words that a session is made of. */
class WordsOfADayTest {
  private final Plan three = RandomPlans.comparison(new Random(1), 3, 12, 1);

  @Test
  void lapsOfTheDayAndLapsOfTheirStintsAreTheSameLaps() {
    TreeSet<LapId> sorted = new TreeSet<>();
    for (int per = 1; per <= 5; per++) {
      for (int number = 1; number <= 40; number++) {
        LapId lap = LapId.ofDay(number, per);
        assertThat(lap.ofDay(per)).isEqualTo(number);
        assertThat(lap.lap()).isBetween(1, per);
        assertThat(lap.stint()).isEqualTo((int) Math.ceil(number / (double) per));
        if (per == 3) {
          sorted.add(lap);
        }
      }
    }
    assertThat(sorted.stream().map(lap -> lap.ofDay(3))).isSorted().hasSize(40);
  }

  @ParameterizedTest
  @CsvSource({"0, 1", "1, 0", "-1, 1"})
  void lapsAndStintsAreCountedFromOne(int stint, int lap) {
    assertThatThrownBy(() -> new LapId(stint, lap))
        .hasMessage("stints and laps are counted from 1");
  }

  @ParameterizedTest
  @CsvSource({"A, 0", "b, 1", " C , 2", "SQ0ZK, 0"})
  void aSetupIsGuessedByLetterOrName(String typed, int setup) {
    String words = typed.startsWith("SQ") ? three.setups().get(0).name() : typed;
    assertThat(GuessWords.parse(three, words)).contains(new Guess(setup, null, ""));
  }

  @ParameterizedTest
  @ValueSource(strings = {"D", "@", "AB", "", "Sq9zk", "1", "a b"})
  void whatNamesNoSetupIsNoGuess(String typed) {
    assertThat(GuessWords.parse(three, typed)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"-", "−", " don't know ", "DON'T KNOW"})
  void toNotKnowIsAGuessToo(String typed) {
    assertThat(GuessWords.parse(three, typed)).contains(new Guess(null, null, ""));
  }

  @Test
  void everyEventIsReadFromItsOwnWordAndNothingElseIsAnEvent() {
    for (VoidEvent event : VoidEvent.values()) {
      assertThat(VoidEvent.parse(event.text())).contains(event);
      assertThat(VoidEvent.parse(event.name())).contains(event);
    }
    assertThat(VoidEvent.parse("  Wrong - line ")).contains(VoidEvent.WRONG_LINE);
    assertThat(VoidEvent.parse("slow")).isEmpty();
    assertThat(VoidEvent.parse("crash traffic")).isEmpty();
  }

  @Test
  void idsAreRandomUuidsOfVersionFourAndTwoOfThemDiffer() {
    byte[] ones = new byte[16];
    java.util.Arrays.fill(ones, (byte) 0xff);
    assertThat(SessionId.of(new byte[16]).text()).isEqualTo("00000000-0000-4000-8000-000000000000");
    assertThat(NotebookId.of(ones).text()).isEqualTo("ffffffff-ffff-4fff-bfff-ffffffffffff");
    assertThat(SessionId.of(ones).brief()).isEqualTo("ffffffff");
    assertThat(SessionId.of(ones)).isGreaterThan(SessionId.of(new byte[16]));
    assertThat(NotebookId.of(ones)).isGreaterThan(NotebookId.of(new byte[16]));
    assertThat(SessionId.of(ones)).hasToString("ffffffff-ffff-4fff-bfff-ffffffffffff");
    assertThat(NotebookId.of(ones)).hasToString("ffffffff-ffff-4fff-bfff-ffffffffffff");
    assertThatThrownBy(() -> new NotebookId("mine"))
        .hasMessage("\"mine\" is not the id of a session");
  }

  @Test
  void aHashIsSha256OfTheTextInUtf8() {
    // FIPS 180-2, appendix B.1.
    assertThat(Hash.of("abc"))
        .hasToString("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    assertThat(Hash.of("é")).isNotEqualTo(Hash.of("e"));
    assertThat(Hash.NONE.hex()).matches("0{64}");
    assertThatThrownBy(() -> new Hash("AB")).hasMessage("a hash is 64 hexadecimal digits");
  }

  @Test
  void aMessageOnAValueNamesItsLineAndItsColumnIfItHasOne() {
    LapInput lap =
        new LapInput(
            new LapId(1, 1), Map.of(), null, "", null, "line 7", Map.of("time", "column C"));
    assertThat(lap.where("time")).isEqualTo("line 7, column C");
    assertThat(lap.where("grip")).isEqualTo("line 7");
    LapInput bare = LapInput.of(new LapId(2, 1), Map.of("time", BigDecimal.ONE));
    assertThat(bare.values()).containsExactly(Map.entry("time", BigDecimal.ONE));
    assertThat(bare.where("time")).isEmpty();
  }

  @Test
  void anOldLapKeepsItsValuesWithoutIdleNoughts() {
    PlainLap lap = new PlainLap(1, "", Map.of("time", new BigDecimal("95.30")), false);
    assertThat(lap.values()).isEqualTo(Map.of("time", new BigDecimal("95.3")));
    assertThatThrownBy(() -> lap.values().clear())
        .isInstanceOf(UnsupportedOperationException.class);
  }

  @Test
  void aSessionOnlyMovesForwardThroughItsSteps() {
    List<Step> day = List.of(Step.COMMITTED, Step.RIDING, Step.CUT_SHORT);
    List<Step> open = List.of(Step.UNSEALED, Step.REPORTED);
    for (Step step : Step.values()) {
      assertThat(step.day()).isEqualTo(day.contains(step));
      assertThat(step.sealed()).isEqualTo(!open.contains(step));
      for (Fact fact : new blindlap.exchange.AnyFact(3).everyKind()) {
        assertThat(StepAfter.of(step, fact))
            .as("%s after %s", step, fact)
            .isGreaterThanOrEqualTo(step);
      }
      Step reported = step == Step.UNSEALED ? Step.REPORTED : step;
      assertThat(StepAfter.of(step, new Fact.ReportWritten("report.pdf"))).isEqualTo(reported);
    }
  }
}

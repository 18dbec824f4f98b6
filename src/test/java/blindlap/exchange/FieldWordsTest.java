package blindlap.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** What a field takes is said from the bundle. */
class FieldWordsTest {
  @ParameterizedTest
  @EnumSource(FieldWords.class)
  void everyConstantHasWords(FieldWords words) {
    assertThat(words.say("12")).isNotBlank().doesNotContain("{").doesNotContain(words.name());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "stints: [1] | Found a list, but this field takes a whole number.",
        "question: {a: b} | Found an object, but this field takes a text.",
        "day: soon | Found \"soon\", but this field takes a date such as 2026-11-14.",
        "setups: two | Found \"two\", but this field takes a list.",
        "kind: race | Found \"race\", but this field takes one of: comparison, noise run, steps"
            + " day, telling run.",
        "level: 0.1 | Found \"0.1\", but this field takes \"0.05\", the only one there is.",
        "setups: [{name: A, mass: heavy}, {name: B}] | Found \"heavy\", but this field takes a"
            + " number with g, kg, lb or oz.",
      })
  void aWrongValueIsToldWithWhatTheFieldTakes(String yaml, String sentence) {
    assertThat(
            blindlap.wording.day.Problems.sentences(
                PlanReader.read(blindlap.plan.Plans.text(yaml), blindlap.plan.Plans.protocols())
                    .problems()))
        .anySatisfy(said -> assertThat(said).endsWith(sentence));
  }
}

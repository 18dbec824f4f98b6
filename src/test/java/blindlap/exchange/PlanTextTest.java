package blindlap.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.Plans;
import blindlap.plan.Starter;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PlanTextTest {
  @Test
  void aPlanFileWrittenFromItsFieldsReadsAsTheSamePlan() {
    String json = Plans.text("");
    Map<String, Object> fields = PlanText.read(json).fields();
    String yaml = PlanText.yaml(fields);

    assertThat(PlanReader.read(yaml, Plans.protocols()).problems()).isEmpty();
    assertThat(PlanReader.read(yaml, Plans.protocols()).plan()).isEqualTo(Plans.with(""));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"1.50", "yes", "no", "007", "09:00", "null", "- a", "a: b", "#", "\"x\"", "ü ☂"})
  void whatWasTypedComesBackLetterByLetter(String typed) {
    String yaml = PlanText.yaml(Map.of("trail", typed, "stints", "16"));

    assertThat(PlanText.read(yaml).fields()).containsEntry("trail", typed);
  }

  /** The slips of people who type YAML, each with the start of what is said of it. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '^',
      value = {
        "question: x\\n\\tfoo: y | a tab stands here",
        "question: a: b | a colon with a blank behind it",
        "question: a\\n rider: b | a colon with a blank behind it",
        "question: a\\nrider\\ntrail: b | the name of a field has no colon",
        "question: \"a | a text in quotes is not closed",
        "question: \"a\\qb\" | a text in quotes is not closed, or a sign within it",
        "setups: [\\na | a bracket is not closed",
        "{\"question\": \"a\" \"rider\": 3} | a bracket is not closed, or a comma is missing",
        "setups:\\n  - a\\n b: c | a line is not indented like those",
        "question: @quoted scalar | it breaks off here, or a sign",
      })
  void aSlipIsSaidInWordsOfOurs(String typed, String says) {
    String why =
        PlanText.read(typed.replace("\\n", "\n").replace("\\t", "\t")).problems().toString();

    assertThat(why).contains(says);
    assertThat(why).doesNotContain("token", "while ", "<", "scalar", "mapping", "stream", "Source");
  }

  @Test
  void aFileThatIsNoPlanIsKeptOutWithItsPlace() {
    assertThat(PlanText.read("just words").problems()).hasSize(1);
    assertThat(PlanText.read("a: [1\nb: 2").problems().get(0).where()).startsWith("line 2");
  }

  @Test
  void massesComeInTheUnitAsTyped() {
    assertThat(SetupReader.grams("742 g")).hasToString("742.0");
    assertThat(SetupReader.grams("1.64 lb")).hasToString("743.9");
    assertThat(SetupReader.grams("0.742 kg")).hasToString("742.0");
    assertThat(SetupReader.grams("26 oz")).hasToString("737.1");
    assertThat(SetupReader.grams("742")).isNull();
  }

  @Test
  void theStartingSetsAreReadWholeAndRecommendNothing() throws IOException {
    try (InputStream in = PlanTextTest.class.getResourceAsStream("starters.yaml")) {
      String text =
          new String(java.util.Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
      Starter starter = Starters.read(text);

      assertThat(starter.components())
          .extracting(Starter.Component::name)
          .contains("rear shock with air spring", "fork", "rear tyre", "wheel", "free form");
      assertThat(starter.components())
          .flatExtracting(Starter.Component::settings)
          .allSatisfy(setting -> assertThat(setting.value()).isEmpty());
      assertThat(starter.measures())
          .allSatisfy(measure -> assertThat(measure.worthwhile()).isNull())
          .extracting(m -> m.name())
          .contains("small-bump comfort", "hard bottom-outs", "dabs");
    }
  }
}

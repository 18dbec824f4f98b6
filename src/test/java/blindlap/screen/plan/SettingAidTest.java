package blindlap.screen.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.screen.part.TypedForm;
import blindlap.wording.WorkshopWords;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SettingAidTest {
  private final TypedForm setting = new TypedForm(() -> {});

  private SettingAid aid(String unit) {
    setting.fill(Map.of("name", "sag", "unit", unit));
    return SettingAid.ofSetting(setting);
  }

  private static Optional<WorkshopWords.Answer> answer(WorkshopModel.Line line, String... typed) {
    for (int i = 0; i < typed.length; i++) {
      line.inputs().get(i).set(typed[i]);
    }
    return line.answerProperty().get();
  }

  @Test
  void onlyWhatEndsInTheUnitOfTheRowIsOffered() {
    assertThat(aid("bar").lines()).extracting(WorkshopModel.Line::title).containsOnly("psi to bar");
    assertThat(aid("clicks from open").lines())
        .extracting(WorkshopModel.Line::title)
        .containsOnly("Clicks from open");
    assertThat(aid("clicks").lines()).hasSize(2);
    assertThat(aid("%").lines()).hasSize(3);
    assertThat(aid("shims").lines()).isEmpty();
    assertThat(aid("").lines()).hasSize(WorkshopModel.Kind.values().length - 1);
  }

  @Test
  void aUnitThatStandsThereIsKeptAndAnEmptyOneFilledIn() {
    SettingAid aid = aid("clicks");
    aid.use(answer(aid.lines().get(0), "14", "5").orElseThrow());
    assertThat(setting.field("value").get()).isEqualTo("9");
    assertThat(setting.field("unit").get()).isEqualTo("clicks");

    SettingAid blank = aid("");
    blank.use(answer(blank.lines().get(0), "60", "17").orElseThrow());
    assertThat(setting.field("value").get()).isEqualTo("28.3");
    assertThat(setting.field("unit").get()).isEqualTo("%");
  }

  @Test
  void ballastIsForTheLighterSetup() {
    TypedForm setup = new TypedForm(() -> {});
    SettingAid aid = SettingAid.ofBallast(setup);
    List<WorkshopModel.Line> lines = aid.lines();

    assertThat(lines).hasSize(1);
    WorkshopWords.Answer heavier = answer(lines.get(0), "882", "742").orElseThrow();
    assertThat(heavier.words()).isEqualTo("This setup is the heavier one: 140.0 g on the other");
    assertThat(heavier.usable()).isFalse();
    aid.use(answer(lines.get(0), "742", "882").orElseThrow());
    assertThat(setup.field("ballast_g").get()).isEqualTo("140");
  }

  @ParameterizedTest
  @CsvSource({
    "SAG_MM, 999999999999999;50, 'That is more than anything on a bike has.'",
    "RATE_FOR_SAG, 999999999999999;99;0.000000000001, 'That is more than anything on a bike has.'",
    "SAG_PERCENT, 999999999999999;0.1, 'That is as good as nothing.'",
    "SAG_PERCENT, 60;0, '0 %: no sag at all'",
    "CLICKS_FROM_OPEN, 14;14, '0 from open: fully open'",
    "BALLAST, 742;742, 'No ballast: both weigh the same'",
    "RATE_TO_METRIC, -5, 'That would be below zero.'",
    "SAG_PERCENT, 0;5, 'That cannot be. The stroke must be above 0, but is 0.'",
    "LEVERAGE, 140;0, 'That cannot be. The stroke must be above 0, but is 0.'",
  })
  void tooMuchAndNothingAreSaidInWords(WorkshopModel.Kind kind, String typed, String said) {
    WorkshopModel.Line line = new WorkshopModel.Line(kind);
    answer(line, typed.split(";"));

    assertThat(line.resultProperty().get())
        .startsWith(said)
        .doesNotContain("E1", "Infinity", "NaN", "∞");
  }
}

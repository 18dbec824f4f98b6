package blindlap.screen.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class WorkshopModelTest {
  private static String result(WorkshopModel.Kind kind, String... typed) {
    WorkshopModel.Line line = new WorkshopModel().lines().get(kind.ordinal());
    for (int i = 0; i < typed.length; i++) {
      line.inputs().get(i).set(typed[i]);
    }
    return line.resultProperty().get();
  }

  @Test
  void everyCalculationHasItsWordsAndAsManyNamesAsNumbers() {
    for (WorkshopModel.Line line : new WorkshopModel().lines()) {
      assertThat(line.names()).hasSameSizeAs(line.inputs());
      assertThat(List.of(line.title(), line.formula())).noneMatch(String::isBlank);
    }
  }

  @Test
  void aSofterSpringIsPredictedWithinTheReadingErrorOfWhatIsMeasured() {
    // Common practice, no source: 28 % on 400 lbf/in, about 30 % measured on 388 lbf/in.
    double predicted = WorkshopModel.value(WorkshopModel.Kind.SPRING_STEP, 400, 388, 28);

    assertThat(predicted).isCloseTo(28.87, within(0.005));
    assertThat(Math.abs(predicted - 30)).isLessThan(1.5);
  }

  @Test
  void everyWayBackLeadsBack() {
    assertThat(WorkshopModel.value(WorkshopModel.Kind.SAG_MM, 60, 25)).isEqualTo(15);
    assertThat(WorkshopModel.value(WorkshopModel.Kind.SAG_PERCENT, 60, 15)).isEqualTo(25);
    assertThat(WorkshopModel.value(WorkshopModel.Kind.LEVERAGE, 140, 50)).isEqualTo(2.8);
    assertThat(WorkshopModel.value(WorkshopModel.Kind.WHEEL_TRAVEL, 2.8, 50)).isEqualTo(140);
    assertThat(WorkshopModel.value(WorkshopModel.Kind.PROGRESSIVE_RATE, 80, 100, 50, 75))
        .isEqualTo(90);
    assertThat(WorkshopModel.value(WorkshopModel.Kind.SHARE_AT_RATE, 80, 100, 50, 90))
        .isEqualTo(75);
    assertThat(WorkshopModel.value(WorkshopModel.Kind.CLICKS_FROM_OPEN, 14, 5)).isEqualTo(9);
    assertThat(WorkshopModel.value(WorkshopModel.Kind.CLICKS_FROM_CLOSED, 14, 9)).isEqualTo(5);
  }

  @Test
  void aResultHasItsUnitAndBadInputASentence() {
    assertThat(result(WorkshopModel.Kind.SAG_MM, "60", "25")).isEqualTo("15.0 mm");
    assertThat(result(WorkshopModel.Kind.SAG_MM, "60", "")).isEmpty();
    assertThat(result(WorkshopModel.Kind.SAG_MM, "60", "a lot")).contains("a lot");
    assertThat(result(WorkshopModel.Kind.SAG_MM, "60", "125"))
        .isEqualTo("That cannot be. The sag in per cent must lie between 0 and 100, but is 125.");
    assertThat(result(WorkshopModel.Kind.CLICKS_FROM_OPEN, "14", "15"))
        .isEqualTo(
            "That cannot be. The position from closed must lie between 0 and 14, but is 15.");
    assertThat(result(WorkshopModel.Kind.CLICKS_FROM_OPEN, "14.5", "3"))
        .isEqualTo("That cannot be. Clicks are whole numbers, but this is 14.5.");
    assertThat(result(WorkshopModel.Kind.BALLAST, "742", "-1"))
        .isEqualTo("That cannot be. A mass must be above 0, but is -1.");
    assertThat(result(WorkshopModel.Kind.SPRING_STEP, "80", "20", "30"))
        .isEqualTo(
            "That cannot be. A spring of 20 is too soft: the same load would use more than the whole"
                + " stroke.");
    assertThat(result(WorkshopModel.Kind.PROGRESSIVE_RATE, "80", "70", "50", "75"))
        .isEqualTo("That cannot be. The last rate must not be below the first.");
    assertThat(result(WorkshopModel.Kind.BALLAST, "742", "882")).startsWith("140.0 g");
  }
}

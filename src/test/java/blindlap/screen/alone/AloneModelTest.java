package blindlap.screen.alone;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.TestDay;
import blindlap.screen.Models;
import blindlap.screen.ride.RideModel;
import blindlap.session.DayCommands;
import blindlap.session.SafetyCheck;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.Source;
import blindlap.wording.day.SettingRow;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a rider who swaps alone types: nothing of it is lost, and all of it counts. */
class AloneModelTest {
  private @TempDir(factory = RamFolder.class) Path folder;
  private TestDay day;
  private RideModel ride;
  private AloneModel model;

  @BeforeEach
  void start() {
    day = new TestDay(folder, TestDay.at("level: drawn"), 3);
    ride = Models.ride(day);
    model = Models.alone(day, ride);
    model.showNext();
  }

  @AfterEach
  void end() {
    day.close();
  }

  private AloneSheet sheet() {
    return model.sheetProperty().get().orElseThrow();
  }

  private SettingRow row(String name) {
    return sheet().settings().stream()
        .filter(row -> row.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  private String compression() {
    return row("compression").aim().contains("9") ? "9" : "6";
  }

  private void ready() {
    model.measured("compression", compression());
    model.measured("sag", "26");
    model.measured("front tyre", "1.55");
    for (SafetyCheck check : SafetyCheck.values()) {
      model.confirm(check.name(), true);
    }
    assertThat(model.waitsProperty().get().none()).isTrue();
  }

  @Test
  void aSetupTouchedAndTouchedBackCostsNothingOfWhatWasMeasured() {
    int shown = sheet().fitted();
    model.measured("sag", "28");
    model.accept("sag", "the spring at hand");
    model.measured("front tyre", "1.7");
    model.accept("front tyre", "no pump");
    model.typing("compression", compression());
    List<SettingRow> before = sheet().settings();

    model.fitted(1 - shown);

    assertThat(row("sag").measured()).as("of another shock").isEmpty();
    assertThat(row("front tyre"))
        .as("on the bike, whatever is fitted")
        .isEqualTo(before.get(before.size() - 1));

    model.fitted(shown);

    assertThat(sheet().settings()).isEqualTo(before);
    assertThat(row("sag").reason()).isEqualTo("the spring at hand");
  }

  @Test
  void aReasonOfOneStintIsNotBroughtToTheNext() {
    ready();
    int shown = sheet().fitted();
    model.fitted(1 - shown);
    model.fitted(shown);
    model.mounted();
    ride.warmUpRidden();
    model.showNext();

    model.fitted(1 - sheet().fitted());

    assertThat(sheet().settings()).allMatch(row -> row.measured().isEmpty());
  }

  @Test
  void aLapWaitsWhileAFieldHoldsTextThatCannotBeRead() {
    ready();

    model.typing("sag", "2x");

    assertThat(model.waitsProperty().get().whole()).contains("to be measured: sag");
    model.mounted();
    assertThat(day.state().mounted()).isEmpty();
    assertThat(model.troubleProperty().get()).contains("to be measured: sag");

    model.typing("sag", "26");

    assertThat(model.waitsProperty().get().none()).isTrue();
    model.mounted();
    assertThat(day.state().mounted()).containsOnlyKeys(0);
  }

  @Test
  void aHalfTypedValueOutsideItsToleranceWaitsForItsReason() {
    ready();

    model.typing("sag", "2");

    assertThat(row("sag").outside()).as("nobody is corrected while he types").isEmpty();
    assertThat(model.waitsProperty().get().none()).isFalse();
    model.mounted();
    assertThat(day.state().mounted()).isEmpty();
    assertThat(row("sag").outside()).contains("24 %");

    model.accept("sag", "the pump broke");
    model.mounted();
    assertThat(day.state().mounted()).containsOnlyKeys(0);
  }

  @Test
  void aPageThatIsBuiltAnewShowsWhatIsHalfTyped() {
    model.typing("front tyre", "1.5");

    assertThat(row("front tyre").measured()).isEqualTo("1.5");
  }

  @Test
  void whatIsCopiedFromPaperAndIsNoNumberIsRefusedAndNothingIsWritten() {
    ready();
    model.mounted();
    ride.warmUpRidden();
    LapInput lap = LapInput.of(new LapId(1, 1), Map.of("lap time", new BigDecimal("93.4")));
    day.desk()
        .sessions()
        .act(day.id(), now -> new DayCommands(now).record(List.of(lap), Source.PAPER));
    model.reload();
    model.showNext();
    assertThat(sheet().paper()).isTrue();
    assertThat(model.waitsProperty().get().none()).as("what is empty stays open").isTrue();

    model.typing("sag", "2x");
    model.mounted();

    assertThat(model.troubleProperty().get()).contains("\"2x\" is not a number for \"sag\"");
    assertThat(day.state().mounted()).containsOnlyKeys(0);

    model.typing("sag", "");
    model.mounted();

    assertThat(day.state().mounted()).containsOnlyKeys(0, 1);
  }
}

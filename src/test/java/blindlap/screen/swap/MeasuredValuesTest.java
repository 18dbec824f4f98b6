package blindlap.screen.swap;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.Reviews;
import blindlap.desk.TestDay;
import blindlap.exchange.DataPackageReader;
import blindlap.review.HelperFit;
import blindlap.screen.Models;
import blindlap.session.Fact;
import blindlap.session.LifeCommands;
import blindlap.session.Outcome;
import blindlap.session.SafetyCheck;
import blindlap.session.day.LapId;
import blindlap.session.day.Source;
import blindlap.timing.Stopwatch;
import blindlap.timing.TimeRecord;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the helper types on the Swap page, on its way to the review and the data package. */
class MeasuredValuesTest {
  private static final String PLAN =
      TestDay.EIGHT.replace("bike:\n", "bike:\n  - {name: insert, value: soft}\n");

  private @TempDir(factory = RamFolder.class) Path folder;
  private TestDay day;
  private SwapModel model;

  @BeforeEach
  void start() {
    day = new TestDay(folder, PLAN, 5);
    model = Models.swap(day);
    model.open(day.id());
    model.phrase(day.phrase());
    model.choosePin("0417");
  }

  @AfterEach
  void end() {
    day.close();
  }

  private SwapSheet sheet() {
    return Objects.requireNonNull(model.work().sheetProperty().get());
  }

  private void stint(Map<String, String> typed) {
    model.work().begin();
    day.helper()
        .settings(sheet().stint(), sheet().fitted())
        .forEach(s -> model.work().measured(s.name(), typed.getOrDefault(s.name(), s.value())));
    typed.keySet().forEach(name -> model.work().accept(name, "it stays so"));
    for (SafetyCheck check : SafetyCheck.values()) {
      model.work().confirm(check.name(), true);
    }
    if (sheet().fitAsked()) {
      model.work().riderFit(true);
    }
    for (int minute = 0; minute < 7; minute++) {
      day.clock().move(Duration.ofMinutes(1));
      model.touch();
      model.tick();
    }
    model.work().handOver();
    model.bikeReturned();
    model.reopen("0417");
  }

  private void rideAndUnseal() {
    for (int stint = 1; stint <= 8; stint++) {
      LapId lap = new LapId(stint, 1);
      BigDecimal seconds = new BigDecimal("91." + stint);
      TimeRecord time = Stopwatch.typed(seconds, TimeRecord.TimedBy.RIDER, day.clock());
      day.desk().riderDays().time(day.id(), lap, "lap time", time, false);
      Fact ridden = new Fact.LapRidden(lap, Source.SCREEN);
      day.desk().sessions().act(day.id(), latest -> Outcome.accepted(ridden));
    }
    day.desk().riderDays().closeDay(day.id());
    day.desk().sessions().act(day.id(), latest -> new LifeCommands(latest).closeReview());
    day.desk().keys().unseal(day.state(), day.phrase());
  }

  @Test
  void aValueTypedWithACommaIsFoundAtTheReviewAndInTheDataPackage() {
    stint(Map.of());
    stint(Map.of("sag", "25,5", "front tyre", "1,6"));
    assertThat(model.work().troubleProperty().get()).isEmpty();
    rideAndUnseal();

    HelperFit fit = Objects.requireNonNull(Reviews.day(day.state()).fits().get(1));
    assertThat(fit.measured())
        .containsEntry("sag", new BigDecimal("25.5"))
        .containsEntry("front tyre", new BigDecimal("1.6"));
    assertThat(day.desk().reviews().text(day.state()))
        .anySatisfy(line -> assertThat(line).contains("sag", "25.5 to 26 %"))
        .anySatisfy(line -> assertThat(line).contains("front tyre", "outside tolerance", "1"));
    Map<String, byte[]> files = day.desk().reviews().export(day.state());
    assertThat(new String(files.get("helper.csv"), StandardCharsets.UTF_8))
        .contains(",sag,25.5,\n", ",front tyre,1.6,\n");
    assertThat(DataPackageReader.read(files).fits()).containsEntry(1, fit);
  }

  @Test
  void aSettingInWordsReachesTheReviewAndTheDataPackageAsWords() {
    stint(Map.of());
    stint(Map.of("insert", "soft, rather worn"));
    rideAndUnseal();

    HelperFit fit = Objects.requireNonNull(Reviews.day(day.state()).fits().get(1));
    assertThat(fit.words()).containsExactly(Map.entry("insert", "soft, rather worn"));
    assertThat(day.desk().reviews().text(day.state()))
        .contains(
            "insert: written down as \"soft\" (the warm-up).",
            "insert: written down as \"soft, rather worn\" (stint 1).");
    assertThat(day.desk().reviews().html(day.state(), false)).contains("soft, rather worn");
    Map<String, byte[]> files = day.desk().reviews().export(day.state());
    assertThat(new String(files.get("helper.csv"), StandardCharsets.UTF_8))
        .contains(",insert,,\"soft, rather worn\"\n");
    assertThat(DataPackageReader.read(files).fits()).containsEntry(1, fit);
  }

  @Test
  void aValueWithPointAndCommaIsRefusedInASentenceAndTheLapWaits() {
    stint(Map.of("sag", "1,234.5"));
    assertThat(model.work().waitsProperty().get().whole())
        .contains("\"1,234.5\" for \"sag\" has both a point and a comma");
    assertThat(day.state().handedOver(0)).isFalse();
  }
}

package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.session.Fact;
import blindlap.session.LifeCommands;
import blindlap.session.Outcome;
import blindlap.session.day.LapId;
import blindlap.session.day.Source;
import blindlap.timing.Stopwatch;
import blindlap.timing.TimeRecord;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** When laps were started, in the data package. */
class PackageTimesTest {
  @TempDir Path folder;

  @Test
  void theOpenPackageSaysWhenLapsWereStartedAndTheBlindOneDoesNot() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 1)) {
      day.watched(new LapId(1, 1), "lap time", 90);
      for (int stint = 2; stint <= 8; stint++) {
        TimeRecord typed =
            Stopwatch.typed(new BigDecimal("91.2"), TimeRecord.TimedBy.RIDER, day.clock());
        day.desk().riderDays().time(day.id(), new LapId(stint, 1), "lap time", typed, false);
      }
      for (int stint = 1; stint <= 8; stint++) {
        Fact ridden = new Fact.LapRidden(new LapId(stint, 1), Source.SCREEN);
        day.desk().sessions().act(day.id(), latest -> Outcome.accepted(ridden));
      }
      day.desk().riderDays().closeDay(day.id());

      assertThat(laps(day)).doesNotContain("started").doesNotContain("08:00:00");

      String order = day.order();
      day.desk().sessions().act(day.id(), latest -> new LifeCommands(latest).closeReview());
      day.desk().keys().unseal(day.state(), day.phrase());

      assertThat(laps(day).lines().findFirst().orElseThrow()).endsWith(",setup,started");
      assertThat(laps(day).lines().skip(1).findFirst().orElseThrow())
          .endsWith("," + order.charAt(0) + ",2026-11-14T08:00:00Z");
      assertThat(laps(day).lines().skip(2).findFirst().orElseThrow()).endsWith(",");
    }
  }

  private static String laps(TestDay day) {
    return new String(
        day.desk().reviews().export(day.state()).get("laps.csv"), StandardCharsets.UTF_8);
  }
}

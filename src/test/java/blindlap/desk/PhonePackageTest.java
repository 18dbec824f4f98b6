package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whoever checks a day sees what was said by phone, and when. */
class PhonePackageTest {
  @TempDir Path folder;

  @Test
  void reportAndPackageSayWhatCameByPhoneAndTheFindingReadsBack() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 3)) {
      HelperHand helper = new HelperHand(day);
      helper.handle(1);
      PhoneHand phone = new PhoneHand(day, 0xabc, Duration.ofMinutes(2));
      LapId lap = new LapId(1, 1);
      phone
          .say(a -> a.score(day.id(), lap, "harshness at the hands", BigDecimal.valueOf(30), false))
          .send();
      PhoneHand.Kept plate = phone.say(a -> a.plateRead(day.id(), 2));
      PhoneHand.Kept late = phone.say(a -> a.note(day.id(), new LapId(2, 1), "in the woods"));
      day.clock().move(Duration.ofMinutes(20));
      plate.send();
      late.send();
      for (int stint = 1; stint <= 8; stint++) {
        helper.ride(stint);
      }
      helper.unseal();
      SessionState state = day.state();
      Reviews reviews = day.desk().reviews();
      Map<String, byte[]> files = reviews.export(state);
      String table = new String(files.get("phones.csv"), StandardCharsets.UTF_8);
      assertThat(table.lines()).hasSizeGreaterThanOrEqualTo(4);
      assertThat(table)
          .contains("ScoreGiven,1,1,rider,", "PlateRead,2,,rider,", "NoteWritten,2,1,rider,");
      assertThat(table.lines().filter(line -> line.endsWith(",true"))).hasSizeGreaterThan(1);
      assertThat(new String(files.get("datapackage.json"), StandardCharsets.UTF_8))
          .contains("phones.csv");
      assertThat(Reviews.fromPackage(files)).isNotNull();
      assertThat(reviews.html(state, false))
          .contains("By phone: ", "said without signal and came later")
          .contains("the rider read the code from the plate");
    }
  }
}

package blindlap.phone;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.timing.TimeRecord;
import java.math.BigDecimal;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.mozilla.javascript.NativeObject;

/** What a phone's watch sends is doubtful exactly where the laptop's own would be. */
class PhoneWatchTest {
  private static TimeRecord taken(PhoneModule watch, Object running, double wall, double mono) {
    NativeObject took = (NativeObject) watch.call("stopped", running, wall, mono);
    return new TimeRecord(
        at(took, "started"),
        at(took, "stopped"),
        new BigDecimal(String.valueOf(took.get("elapsed_ms"))).movePointRight(6).longValueExact(),
        TimeRecord.TimedBy.STARTER,
        null);
  }

  private static Instant at(NativeObject took, String end) {
    return Instant.ofEpochMilli(Long.parseLong(String.valueOf(took.get(end))));
  }

  @Test
  void aTimeCountsOnlyWhereBothClocksAgree() {
    try (PhoneModule watch = new PhoneModule("watch")) {
      Object running = watch.call("started", 1_000_000.0, 500.25);
      TimeRecord sound = taken(watch, running, 1_093_100.0, 93_600.5);
      assertThat(sound.doubtful()).isFalse();
      assertThat(sound.seconds()).isEqualByComparingTo("93.10025");
      assertThat(taken(watch, running, 1_033_100.0, 93_600.5).doubtful()).isTrue(); // clock set
      assertThat(taken(watch, running, 1_093_100.0, 40_500.0).doubtful()).isTrue(); // slept
      Object reloaded = watch.call("takenUp", 1_000_000.0);
      assertThat(taken(watch, reloaded, 1_093_100.0, 93_600.5).doubtful()).isTrue();
      assertThat(((Number) watch.call("wholeSeconds", reloaded, 1_058_999.0, 7.0)).intValue())
          .isEqualTo(58);
      assertThat(((Number) watch.call("wholeSeconds", running, 9_999_999.0, 59_500.0)).intValue())
          .isEqualTo(58);
    }
  }
}

package blindlap.session.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import blindlap.RamFolder;
import blindlap.desk.TestDay;
import blindlap.desk.day.RiderDays;
import java.math.BigDecimal;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DayTest {
  private static final LapId FIRST = new LapId(1, 1);

  private @TempDir(factory = RamFolder.class) Path folder;
  private TestDay test;

  @BeforeEach
  void start() {
    test = new TestDay(folder, TestDay.EIGHT, 5);
  }

  @AfterEach
  void end() {
    test.close();
  }

  private RiderDays riders() {
    return test.desk().riderDays();
  }

  private Day day() {
    return riders().day(test.id()).orElseThrow();
  }

  private void ride(int stint) {
    riders().handedOver(test.id(), stint);
    riders().ridden(test.id(), new LapId(stint, 1));
  }

  @Test
  void theStintInHandGoesFromTheWarmUpToTheLastStintOfADayCutShort() {
    assertThat(day().warmingUp()).isTrue();
    assertThat(day().stintNow()).isZero();
    riders().handedOver(test.id(), 0);
    riders().warmUp(test.id());
    assertThat(day().stintNow()).isEqualTo(1);
    ride(1);
    assertThat(day().nextLap()).contains(new LapId(2, 1));
    assertThat(day().stintNow()).isEqualTo(2);
    assertThat(day().lastStint()).isEqualTo(8);
    riders().cutShort(test.id(), 1, "dark", "M. Oster", false);
    assertThat(day().lastStint()).isEqualTo(1);
    assertThat(day().nextLap()).isEmpty();
    assertThat(day().stintNow()).isEqualTo(1);
  }

  @Test
  void aDayThatWasHandedOutStaysAsItWas() {
    riders().score(test.id(), FIRST, "grip in the rocks", BigDecimal.valueOf(40), false);
    Day before = day();
    riders().score(test.id(), FIRST, "grip in the rocks", BigDecimal.valueOf(70), false);
    riders().note(test.id(), FIRST, "wet roots");
    ride(1);
    LapState lap = before.lap(FIRST).orElseThrow();
    assertThat(lap.values().get("grip in the rocks")).isEqualByComparingTo("40");
    assertThat(lap.note()).isEmpty();
    assertThat(before.lapsRidden()).isZero();
    assertThat(before.handedOver(1)).isFalse();
    assertThat(day().lap(FIRST).orElseThrow().note()).isEqualTo("wet roots");
    assertThatThrownBy(() -> lap.values().clear())
        .isInstanceOf(UnsupportedOperationException.class);
    assertThatThrownBy(() -> before.laps().clear())
        .isInstanceOf(UnsupportedOperationException.class);
  }
}

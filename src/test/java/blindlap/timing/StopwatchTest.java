package blindlap.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import blindlap.timing.TimeRecord.TimedBy;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;

class StopwatchTest {
  private static final Instant START = Instant.parse("2026-11-14T09:00:00Z");

  private Instant wall = START;
  private long nanos = 5_000_000_000L;
  private final Stopwatch watch = new Stopwatch(new Wall(), () -> nanos);

  private final class Wall extends Clock {
    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }

    @Override
    public Instant instant() {
      return wall;
    }
  }

  private void pass(Duration byWall, Duration byCounter) {
    wall = wall.plus(byWall);
    nanos += byCounter.toNanos();
  }

  private TimeRecord timed(long wallMillis, long counterMillis) {
    watch.start();
    pass(Duration.ofMillis(wallMillis), Duration.ofMillis(counterMillis));
    return watch.stop(TimedBy.STARTER);
  }

  @Test
  void theCounterCountsWhereBothClocksAgreeWithinTwoTenths() {
    TimeRecord time = timed(93_300, 93_100);
    assertThat(time.doubtful()).isFalse();
    assertThat(time.seconds()).isEqualByComparingTo("93.1");
    assertThat(time.timedBy()).isEqualTo(TimedBy.STARTER);
  }

  @Test
  void aMillisecondMoreMakesTheTimeDoubtfulInEitherDirection() {
    assertThat(timed(93_301, 93_100).doubtful()).isTrue();
    assertThat(timed(92_899, 93_100).doubtful()).isTrue();
  }

  @Test
  void aDoubtfulTimeCountsForNothingAndKeepsBothClocks() {
    TimeRecord slept = timed(3_693_100, 93_100);
    assertThat(slept.seconds()).isNull();
    assertThat(slept.wallNanos()).isEqualTo(3_693_100_000_000L);
    assertThat(slept.monotonicNanos()).isEqualTo(93_100_000_000L);
  }

  @Test
  void aClockSetBackAnHourDuringALapMakesItsTimeDoubtful() {
    TimeRecord back = timed(93_100 - 3_600_000, 93_100);
    assertThat(back.doubtful()).isTrue();
    assertThat(back.wallNanos()).isNegative();
  }

  @Test
  void aFalseStartGoesBackToNoughtAndTheNextStartCounts() {
    watch.start();
    pass(Duration.ofSeconds(4), Duration.ofSeconds(4));
    watch.reset();
    assertThat(watch.running()).isEqualTo(Stopwatch.Running.READY);
    assertThat(timed(90_000, 90_000).seconds()).isEqualByComparingTo("90");
  }

  @Test
  void aStopTakenBackLetsTheWatchRunOnFromItsFirstStart() {
    timed(60_000, 60_000);
    assertThat(watch.undoStop()).isEqualTo(START);
    assertThat(watch.running()).isEqualTo(Stopwatch.Running.RUNNING);
    pass(Duration.ofSeconds(30), Duration.ofSeconds(30));
    assertThat(watch.stop(TimedBy.RIDER).seconds()).isEqualByComparingTo("90");
  }

  @Test
  void aWatchTakenUpAfterARestartGivesADoubtfulTimeAndNeverAWrongOne() {
    watch.takeUp(START.minusSeconds(50));
    pass(Duration.ofSeconds(40), Duration.ofSeconds(40));
    TimeRecord time = watch.stop(TimedBy.RIDER);
    assertThat(time.doubtful()).isTrue();
    assertThat(time.wallNanos()).isEqualTo(90_000_000_000L);
  }

  @Test
  void aWatchThatDoesNotRunCannotBeStopped() {
    assertThatThrownBy(() -> watch.stop(TimedBy.RIDER)).isInstanceOf(IllegalStateException.class);
    timed(1_000, 1_000);
    assertThatThrownBy(() -> watch.stop(TimedBy.RIDER)).isInstanceOf(IllegalStateException.class);
    assertThat(new Stopwatch(new Wall(), () -> nanos).undoStop()).isNull();
  }

  @Test
  void aTypedTimeCountsAsTyped() {
    TimeRecord time = Stopwatch.typed(new BigDecimal("93.1"), TimedBy.OTHER, new Wall());
    assertThat(time.seconds()).isEqualByComparingTo("93.1");
  }
}

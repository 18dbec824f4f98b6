package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.DataPackageReader;
import blindlap.plan.Setting;
import blindlap.review.Analysis;
import blindlap.review.DayRecord;
import blindlap.review.Handling;
import blindlap.session.Fact;
import blindlap.session.HelperEntry;
import blindlap.session.LifeCommands;
import blindlap.session.Outcome;
import blindlap.session.SafetyCheck;
import blindlap.session.day.LapId;
import blindlap.session.day.Source;
import blindlap.stats.tell.WaitTest;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.function.IntConsumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Waits from the entries of a whole day to its finding and its data package. */
class DayWaitsTest {
  @TempDir Path folder;

  private static final Duration GIVEN = Duration.ofMinutes(7);

  /** One handling; a real swap takes 40 s longer. */
  private static void handle(TestDay day, HelperDay helper, int stint, IntConsumer ride) {
    HelperDay.Work work = helper.work(stint);
    Map<String, String> measured = new LinkedHashMap<>();
    for (Setting setting : work.settings()) {
      measured.put(setting.name(), setting.value());
    }
    day.clock().move(Duration.ofSeconds(20));
    Instant begun = day.clock().instant();
    Duration took = GIVEN.plusSeconds((work.real() ? 40 : 0) + stint * 5 % 3);
    day.clock().move(took);
    HelperEntry entry =
        new HelperEntry(
                stint,
                "M. Oster",
                work.setup(),
                work.setup(),
                begun,
                null,
                measured,
                List.of(),
                EnumSet.allOf(SafetyCheck.class),
                new TreeMap<>(stint == 0 ? Map.of() : Map.of(stint - 1, true)),
                List.of(),
                "")
            .withTiming(new HelperEntry.Timing(GIVEN, took, stint == 4 ? true : null, "cold"));
    // A clock that was set during a handling: the two clocks of the record disagree.
    HelperEntry said =
        stint == 6
            ? entry.withTiming(new HelperEntry.Timing(GIVEN, took.minusSeconds(60), null, ""))
            : entry;
    // Sample days are made without the test library.
    if (!(helper.handOver(said) instanceof Sessions.Result.Done)) {
      throw new AssertionError("the hand-over of stint " + stint + " was refused");
    }
    if (stint > 0) {
      day.clock().move(Duration.ofMinutes(10));
      ride.accept(stint);
    }
  }

  private static DayRecord ride(TestDay day, Source source) {
    return ride(
        day,
        stint -> {
          Fact ridden = new Fact.LapRidden(new LapId(stint, 1), source);
          day.desk().sessions().act(day.id(), latest -> Outcome.accepted(ridden));
        });
  }

  /** A day whose handlings are timed, up to the opened key. */
  static DayRecord ride(TestDay day, IntConsumer ride) {
    HelperDay helper = day.helper();
    for (int stint = 0; stint <= 16; stint++) {
      handle(day, helper, stint, ride);
    }
    day.desk().riderDays().closeDay(day.id());
    day.desk().sessions().act(day.id(), latest -> new LifeCommands(latest).closeReview());
    day.desk().keys().unseal(day.state(), day.phrase());
    return Reviews.day(day.state());
  }

  @Test
  void waitsRunFromTheLastLapBeingDoneToTheBikeBeingHandedOver() {
    try (TestDay day = new TestDay(folder, TestDay.SIXTEEN, 3)) {
      DayRecord record = ride(day, Source.SCREEN);
      Handling third = Objects.requireNonNull(record.handlings().get(3));
      long real = record.order().charAt(2) != record.order().charAt(1) ? 40 : 0;
      assertThat(third.waited()).isEqualByComparingTo(String.valueOf(20 + 420 + real));
      assertThat(Objects.requireNonNull(record.handlings().get(4)).mishap()).isEqualTo("cold");
      assertThat(Objects.requireNonNull(record.handlings().get(6)).waited()).isNull();
      WaitTest test = Analysis.of(record).waits().test().orElseThrow();
      assertThat(test.kind().flagged()).isTrue();
      assertThat(test.kind().seconds()).isBetween(38.0, 42.0);
    }
  }

  @Test
  void theDataPackageGivesTheSameWaitsAndTheSameFinding() {
    try (TestDay day = new TestDay(folder, TestDay.SIXTEEN, 3)) {
      DayRecord record = ride(day, Source.SCREEN);
      Map<String, byte[]> files = day.desk().reviews().export(day.state());
      assertThat(new String(Objects.requireNonNull(files.get("waits.csv")), StandardCharsets.UTF_8))
          .startsWith("stint,wait,counts,real,took,given,mishap,words");
      DayRecord read = DataPackageReader.read(files);
      assertThat(read.handlings()).isEqualTo(record.handlings());
      assertThat(Analysis.of(read).waits().test()).isEqualTo(Analysis.of(record).waits().test());
    }
  }

  @Test
  void lapsThatWereKeyedInLaterGiveNoWaits() {
    try (TestDay day = new TestDay(folder, TestDay.SIXTEEN, 3)) {
      DayRecord record = ride(day, Source.PAPER);
      assertThat(record.handlings().values()).allMatch(handling -> handling.waited() == null);
      assertThat(Analysis.of(record).waits().untested()).contains(WaitTest.Untested.TOO_FEW);
    }
  }
}

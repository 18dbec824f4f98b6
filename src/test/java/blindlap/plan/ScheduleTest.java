package blindlap.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.fault.Problem;
import blindlap.wording.day.DayWords;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;

class ScheduleTest {
  private static final String TABLE =
      "timetable: {zone: Europe/Vienna, start: '%s', daylight_end: '%s', lap: 2, climb: 8, swap: 7,"
          + " scoring: 2, rest_every: 8, rest: 30}\n";

  private static Schedule schedule(String yaml) {
    return Schedule.of(Plans.with(yaml)).orElseThrow();
  }

  private static String clock(java.time.ZonedDateTime at) {
    return at.toLocalTime().toString();
  }

  @Test
  void theFirstStintIsHandledLikeEveryOther() {
    // By hand: fitting 7, two warm-up laps of 10, then 19 a stint and a rest of 30 after the
    // eighth.
    Schedule schedule = schedule(TABLE.formatted("09:00", "16:38"));
    List<Schedule.Block> stints = schedule.stints();

    assertThat(clock(stints.get(0).from())).isEqualTo("09:27");
    assertThat(clock(stints.get(0).ride())).isEqualTo("09:34");
    assertThat(clock(stints.get(7).to())).isEqualTo("11:59");
    assertThat(clock(stints.get(8).from())).isEqualTo("12:29");
    assertThat(clock(schedule.end())).isEqualTo("15:01");
    assertThat(schedule.spare()).isEqualTo(Duration.ofMinutes(97));
  }

  @Test
  void aDraftWithoutADaySaysItsClockAndNoDate() {
    Schedule draft = schedule("day: 1970-01-01\n" + TABLE.formatted("09:00", "16:38"));
    assertThat(draft.start().toLocalDate()).isEqualTo(Plan.NO_DAY);
    assertThat(DayWords.summary(draft))
        .isEqualTo("The day starts at 09:00 CET and is over at 15:01, 1 h 37 min before 16:38.");
    assertThat(DayWords.summary(schedule(TABLE.formatted("09:00", "16:38"))))
        .startsWith("The day starts at 2026-11-14 09:00 CET");
  }

  @Test
  void aDayThatBeginsInTheEveningEndsAfterMidnight() {
    Schedule schedule = schedule(TABLE.formatted("22:00", "05:00"));

    assertThat(schedule.end().toLocalDate()).hasToString("2026-11-15");
    assertThat(clock(schedule.end())).isEqualTo("04:01");
    assertThat(schedule.fits()).isTrue();
  }

  @Test
  void aChangeOfTheClocksShiftsTheClockAndNotTheDay() {
    // Central European time goes back from 03:00 to 02:00 on 25 October 2026 (tz database).
    Schedule autumn = schedule("day: 2026-10-24\n" + TABLE.formatted("22:00", "05:00"));
    Schedule usual = schedule("day: 2026-10-17\n" + TABLE.formatted("22:00", "05:00"));

    assertThat(Duration.between(autumn.start(), autumn.end()))
        .isEqualTo(Duration.between(usual.start(), usual.end()));
    assertThat(clock(usual.end())).isEqualTo("04:01");
    assertThat(clock(autumn.end())).isEqualTo("03:01");
    assertThat(autumn.spare()).isEqualTo(usual.spare().plusHours(1));
  }

  @Test
  void aStartThatTheClockSkipsIsNamed() {
    // From 02:00 to 03:00 on 29 March 2026 (tz database).
    assertThat(Plans.faults("day: 2026-03-29\n" + TABLE.formatted("02:30", "16:38")))
        .containsExactly(PlanFault.START_SKIPPED);
  }

  @Test
  void aDayTooLongSaysWhatToDrop() {
    Plan plan = Plans.with(TABLE.formatted("10:00", "15:40"));

    assertThat(PlanCheck.problems(plan))
        .extracting(Problem::fault)
        .containsExactly(PlanFault.DAY_TOO_LONG);
    assertThat(Schedule.waysToFit(plan))
        .extracting(Schedule.Way::drop, Schedule.Way::left)
        .containsExactly(
            org.assertj.core.api.Assertions.tuple(Schedule.Drop.RESTS, 0),
            org.assertj.core.api.Assertions.tuple(Schedule.Drop.STINTS, 12));
  }

  @Test
  void theStintsThatFallIntoTheDarkAreNamed() {
    Schedule late = Schedule.of(Plans.with(TABLE.formatted("10:00", "15:40"))).orElseThrow();
    List<Schedule.Block> dark = late.inTheDark();

    assertThat(dark).isNotEmpty().allMatch(stint -> stint.to().isAfter(late.limit()));
    int light = late.stints().size() - dark.size();
    assertThat(late.stints().subList(0, light)).noneMatch(s -> s.to().isAfter(late.limit()));
    assertThat(DayWords.dark(late))
        .hasValue(
            "Stints %d to 16 fall into the dark: they are not over by 15:40 CET, the end of daylight in this plan."
                .formatted(light + 1));
    Schedule early = Schedule.of(Plans.with(TABLE.formatted("09:00", "16:38"))).orElseThrow();
    assertThat(DayWords.dark(early)).isEmpty();
  }

  @Test
  void eachWayToFitFits() {
    for (String end : List.of("12:00", "13:00", "14:00", "15:30")) {
      Plan plan = Plans.with(TABLE.formatted("10:00", end));
      for (Schedule.Way way : Schedule.waysToFit(plan)) {
        assertThat(way.end()).isBeforeOrEqualTo(Schedule.of(plan).orElseThrow().limit());
      }
    }
  }

  @Test
  void theLapBudgetCapsTheDay() {
    String table =
        TABLE.formatted("09:00", "18:00").replace("rest: 30", "rest: 30, lap_budget: 17");

    assertThat(Plans.faults(table)).containsExactly(PlanFault.LAP_BUDGET);
    assertThat(Schedule.mostStints(Plans.with(table))).isEqualTo(12);
  }

  @Test
  void settlingLapsAndCoolDownTakeTheirTime() {
    String longer = TABLE.formatted("07:00", "23:00").replace("swap: 7", "swap: 7, cool_down: 3");
    Plan plan = Plans.with(longer + "laps: {warm_up: 0, settling: 1, scored: 2}\n");
    Schedule schedule = Schedule.of(plan).orElseThrow();

    // 3 + 7, then three laps of 10 and two scorings of 2: 44 minutes a stint, no warm-up handling.
    assertThat(clock(schedule.stints().get(0).from())).isEqualTo("07:00");
    assertThat(clock(schedule.stints().get(1).from())).isEqualTo("07:44");
  }

  @Test
  void handlingsCountTheWarmUpAndEveryDummySwap() {
    assertThat(Handlings.of(Plans.with(""))).isEqualTo(new Handlings(17, 8, 9));
  }

  @Test
  void aPartIsNotHandledMoreOftenThanItsMakerAllows() {
    String limited = "setups: [{name: K, most_refits: %d}, {name: L}]\ndifferences_reason: ''\n";

    assertThat(Plans.faults(limited.formatted(9))).isEmpty();
    assertThat(Plans.faults(limited.formatted(8))).containsExactly(PlanFault.REFITS_EXCEEDED);
  }
}

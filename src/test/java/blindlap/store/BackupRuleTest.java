package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Which backups are kept. */
class BackupRuleTest {
  private static Instant at(String time) {
    return Instant.parse(time + ":00Z");
  }

  private static Set<Instant> kept(List<Instant> times) {
    return BackupRule.kept(times, ZoneOffset.UTC);
  }

  @Test
  void the_latest_three_are_kept_however_close_together() {
    List<Instant> times =
        List.of(
            at("2026-11-14T10:00"),
            at("2026-11-14T10:05"),
            at("2026-11-14T10:10"),
            at("2026-11-14T10:15"));
    assertThat(kept(times)).containsExactlyElementsOf(times.subList(1, 4));
  }

  @Test
  void of_an_earlier_day_the_last_is_kept() {
    List<Instant> times =
        List.of(
            at("2026-11-10T09:00"),
            at("2026-11-10T18:00"),
            at("2026-11-14T10:05"),
            at("2026-11-14T10:10"),
            at("2026-11-14T10:15"));
    assertThat(kept(times)).contains(at("2026-11-10T18:00")).doesNotContain(at("2026-11-10T09:00"));
  }

  @Test
  void ten_years_of_a_backup_every_day_leave_days_weeks_months_and_years() {
    List<Instant> times = new ArrayList<>();
    Set<Instant> there = Set.of();
    // As it happens: one more each day, then thinned.
    for (LocalDate day = LocalDate.of(2017, 1, 1);
        day.isBefore(LocalDate.of(2027, 1, 1));
        day = day.plusDays(1)) {
      times = new ArrayList<>(there);
      times.add(day.atTime(18, 0).toInstant(ZoneOffset.UTC));
      there = kept(times);
    }
    List<String> days = there.stream().map(time -> time.toString().substring(0, 10)).toList();
    assertThat(days.subList(days.size() - 7, days.size()))
        .containsExactly(
            "2026-12-25",
            "2026-12-26",
            "2026-12-27",
            "2026-12-28",
            "2026-12-29",
            "2026-12-30",
            "2026-12-31");
    assertThat(days)
        .as("last days of weeks, months and years")
        .contains("2026-12-20", "2026-12-13", "2026-12-06", "2026-11-30", "2025-02-28")
        .contains("2017-12-31", "2018-12-31", "2024-12-31")
        .doesNotContain("2024-11-30", "2026-12-22");
    assertThat(days).hasSizeLessThan(7 + 5 + 24 + 10);
  }

  @Test
  void time_alone_takes_no_backup_away() {
    List<Instant> times = List.of(at("2016-05-01T10:00"), at("2019-05-01T10:00"));
    assertThat(kept(times)).containsExactlyElementsOf(times);
  }

  @Test
  void thinning_again_takes_nothing_more_away_and_the_latest_always_stays() {
    Random random = new Random(1);
    for (int i = 0; i < 200; i++) {
      List<Instant> times = new ArrayList<>();
      for (int j = random.nextInt(60); j >= 0; j--) {
        times.add(at("2026-11-14T10:00").minus(Duration.ofHours(random.nextInt(30_000))));
      }
      Set<Instant> once = kept(times);
      assertThat(kept(new ArrayList<>(once))).isEqualTo(once);
      assertThat(once).contains(times.stream().max(Instant::compareTo).orElseThrow());
      assertThat(times).containsAll(once);
    }
  }

  @Test
  void days_begin_where_the_rider_is() {
    Instant evening = at("2026-11-13T23:30"); // half past midnight in Vienna: the 14th
    List<Instant> times =
        List.of(
            evening,
            at("2026-11-14T08:00"),
            at("2026-11-16T10:05"),
            at("2026-11-16T10:10"),
            at("2026-11-16T10:15"));
    assertThat(BackupRule.kept(times, ZoneId.of("Europe/Vienna"))).doesNotContain(evening);
    assertThat(kept(times)).contains(evening);
  }
}

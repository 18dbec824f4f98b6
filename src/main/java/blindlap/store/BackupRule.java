package blindlap.store;

import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneId;
import java.time.temporal.IsoFields;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;

/**
 * Which backups are kept: the latest three; the latest of each of the last 7 days, 5 weeks (ISO,
 * from Monday) and 24 months that have one; the latest of every year. Days, weeks, months and years
 * without a backup do not count, so time alone never takes one away.
 */
final class BackupRule {
  static final int LATEST = 3;
  static final int DAYS = 7;
  static final int WEEKS = 5;
  static final int MONTHS = 24;

  private BackupRule() {}

  /**
   * The backups to keep.
   *
   * @param times when backups were made, in any order
   * @param zone where days begin
   */
  static Set<Instant> kept(Collection<Instant> times, ZoneId zone) {
    List<Instant> latestFirst =
        times.stream().distinct().sorted(Comparator.reverseOrder()).toList();
    Set<Instant> kept = new TreeSet<>(latestFirst.stream().limit(LATEST).toList());
    keep(latestFirst, kept, DAYS, time -> day(time, zone));
    keep(latestFirst, kept, WEEKS, time -> week(day(time, zone)));
    keep(latestFirst, kept, MONTHS, time -> YearMonth.from(day(time, zone)));
    keep(latestFirst, kept, Integer.MAX_VALUE, time -> day(time, zone).getYear());
    return kept;
  }

  private static LocalDate day(Instant time, ZoneId zone) {
    return LocalDate.ofInstant(time, zone);
  }

  private static String week(LocalDate day) {
    return day.get(IsoFields.WEEK_BASED_YEAR) + "-" + day.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR);
  }

  private static void keep(
      List<Instant> latestFirst, Set<Instant> kept, int most, Function<Instant, Object> span) {
    Set<Object> spans = new HashSet<>();
    for (Instant time : latestFirst) {
      if (spans.size() < most && spans.add(span.apply(time))) {
        kept.add(time);
      }
    }
  }
}

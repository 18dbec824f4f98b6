package blindlap.wording.day;

import blindlap.plan.Handlings;
import blindlap.plan.Plan;
import blindlap.plan.Schedule;
import blindlap.plan.TellingRun;
import java.time.Duration;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The day against the clock, in sentences. */
public final class DayWords {
  private static final Words WORDS = Words.of("day");
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final DateTimeFormatter ZONED =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm z", Locale.ENGLISH);

  private static final DateTimeFormatter LIMIT =
      DateTimeFormatter.ofPattern("HH:mm z", Locale.ENGLISH);

  private DayWords() {}

  /** Clock time, such as "09:40". */
  public static String clock(ZonedDateTime at) {
    return CLOCK.format(at);
  }

  /** Day, clock time and zone, such as "2026-11-14 09:40 CET". */
  public static String zoned(ZonedDateTime at) {
    return ZONED.format(at);
  }

  /** A length of time, such as "1 h 08 min". */
  public static String duration(Duration time) {
    long minutes = time.abs().toMinutes();
    return minutes < 60
        ? WORDS.say("minutes", minutes)
        : WORDS.say("hours", minutes / 60, String.format(Locale.ROOT, "%02d", minutes % 60));
  }

  /** One sentence: from when to when, and what is left of daylight. */
  public static String summary(Schedule schedule) {
    return WORDS.say(
        schedule.fits() ? "day.fits" : "day.late",
        (dated(schedule) ? ZONED : LIMIT).format(schedule.start()),
        sameDay(schedule.start(), schedule.end())
            ? clock(schedule.end())
            : ZONED.format(schedule.end()),
        duration(schedule.spare()),
        sameDay(schedule.start(), schedule.limit())
            ? clock(schedule.limit())
            : ZONED.format(schedule.limit()));
  }

  /** False of a draft for which no day is typed yet: only its clock means anything. */
  private static boolean dated(Schedule schedule) {
    return !schedule.start().toLocalDate().equals(Plan.NO_DAY);
  }

  private static boolean sameDay(ZonedDateTime one, ZonedDateTime other) {
    return one.toLocalDate().equals(other.toLocalDate())
        && one.getOffset().equals(other.getOffset());
  }

  /** The word for a block of time that is no stint. */
  public static String block(Schedule.Kind kind) {
    return WORDS.say("block." + kind);
  }

  /** The end of what is possible, such as "riding over by 16:38 CET". */
  public static String limit(Schedule schedule) {
    return WORDS.say("limit", LIMIT.format(schedule.limit()));
  }

  /** What is left, such as "1 h 08 min spare". */
  public static String spare(Schedule schedule) {
    return WORDS.say("spare", duration(schedule.spare()));
  }

  /** Which stints would be ridden after the end of daylight, as the plan has it; empty if none. */
  public static Optional<String> dark(Schedule schedule) {
    return dark(schedule, "dark", 1);
  }

  /** The same of a plan; of a telling run the trials. */
  public static Optional<String> dark(Plan plan, Schedule schedule) {
    int laps = lapsOfTrial(plan);
    return laps == 0 ? dark(schedule) : dark(schedule, "dark.trials", laps);
  }

  private static Optional<String> dark(Schedule schedule, String key, int of) {
    List<Schedule.Block> dark = schedule.inTheDark();
    if (dark.isEmpty()) {
      return Optional.empty();
    }
    int first = (dark.get(0).stint() + of - 1) / of;
    int last = (dark.get(dark.size() - 1).stint() + of - 1) / of;
    return Optional.of(
        first == last
            ? WORDS.say(key + ".one", first, LIMIT.format(schedule.limit()))
            : WORDS.say(key, first, last, LIMIT.format(schedule.limit())));
  }

  /** Laps of every trial of a telling run; 0 of other plans. */
  private static int lapsOfTrial(Plan plan) {
    TellingRun run = plan.kind() == Plan.Kind.TELLING_RUN ? plan.telling() : null;
    return run == null ? 0 : run.task().laps();
  }

  /** When the handling before each stint starts, one a line. */
  public static List<String> stints(Schedule schedule) {
    List<String> lines = new ArrayList<>();
    for (Schedule.Block block : schedule.stints()) {
      lines.add(
          WORDS.say(
              "day.stint",
              block.stint(),
              clock(schedule.start(), block.from()),
              clock(schedule.start(), block.ride())));
    }
    return lines;
  }

  /** The same of a plan; of a telling run when each trial begins and is answered, one a line. */
  public static List<String> stints(Plan plan, Schedule schedule) {
    int laps = lapsOfTrial(plan);
    if (laps == 0) {
      return stints(schedule);
    }
    List<Schedule.Block> all = schedule.stints();
    List<String> lines = new ArrayList<>();
    for (int last = laps - 1; last < all.size(); last += laps) {
      Schedule.Block begins = all.get(last + 1 - laps);
      lines.add(
          WORDS.say(
              "day.trial",
              (last + 1) / laps,
              clock(schedule.start(), begins.from()),
              clock(schedule.start(), begins.ride()),
              clock(schedule.start(), all.get(last).to())));
    }
    return lines;
  }

  /** Clock time with what has changed since the start: the zone's offset, or the day. */
  private static String clock(ZonedDateTime start, ZonedDateTime at) {
    String clock = start.getOffset().equals(at.getOffset()) ? clock(at) : LIMIT.format(at);
    return start.toLocalDate().equals(at.toLocalDate()) ? clock : WORDS.say("next.day", clock);
  }

  /** What to drop so that a day that is too long fits. */
  public static String ways(List<Schedule.Way> ways) {
    return ways(String.join(",", ways.stream().map(way -> way.drop() + ":" + way.left()).toList()));
  }

  /** How often parts are handled. */
  public static String handlings(Handlings handlings) {
    return WORDS.say(
        "handlings", handlings.day(), handlings.perSetup(), handlings.perSetupAtMost());
  }

  /**
   * What to drop so that the day fits.
   *
   * @param detail ways as PlanCheck writes them: "RESTS:0,STINTS:12", or "NONE"
   */
  static String ways(String detail) {
    List<String> ways = new ArrayList<>();
    for (String way : detail.split(",", -1)) {
      String[] parts = way.split(":", 2);
      if (parts.length == 2) {
        ways.add(WORDS.say("drop." + parts[0], parts[1]));
      }
    }
    return ways.isEmpty()
        ? WORDS.say("drop.NONE")
        : WORDS.say("drop", String.join(WORDS.say("drop.or"), ways));
  }
}

package blindlap.wording;

import blindlap.fault.Fault;
import blindlap.plan.Plan;
import blindlap.plan.Setting;
import blindlap.plan.Setup;
import blindlap.plan.TellingRun;
import blindlap.session.HelperEntry;
import blindlap.session.SafetyCheck;
import blindlap.wording.day.RideWords;
import blindlap.wording.day.SafetyRow;
import blindlap.wording.day.SettingRow;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Words of the Swap page, for the helper alone. */
public final class SwapWords {
  private static final Words WORDS = Words.of("swap");
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final double LEVEL = 0.05 + 1e-12;

  private SwapWords() {}

  /** A sentence of the bundle. */
  public static String say(String key, Object... arguments) {
    return WORDS.say(key, arguments);
  }

  /** "Stint 5", "Trial 2, lap 1": how a stint begins a line. */
  public static String stint(Plan plan, int stint) {
    return named(plan, stint, "");
  }

  /** "stint 5", "trial 2, lap 1": the same within a sentence. */
  public static String within(Plan plan, int stint) {
    return named(plan, stint, ".within");
  }

  private static String named(Plan plan, int stint, String form) {
    TellingRun run = plan.telling();
    return stint == 0
        ? say("warm.up" + form)
        : run == null
            ? say("stint" + form, stint)
            : say("trial" + form, run.trial(stint), run.place(stint));
  }

  /** Which stint of how many, with its code. */
  public static String head(Plan plan, int stint, int code) {
    TellingRun run = plan.telling();
    return run == null
        ? say("head", stint, plan.stints(), code)
        : say(
            "head.trial",
            run.trial(stint),
            run.trials(),
            run.place(stint),
            run.task().laps(),
            code);
  }

  /** What is waited for, counted in one sentence. */
  public static String waits(List<String> parts) {
    StringBuilder list = new StringBuilder(parts.get(0));
    for (int i = 1; i < parts.size(); i++) {
      list.append(i < parts.size() - 1 ? ", " : say("waits.and")).append(parts.get(i));
    }
    return say("waits", list);
  }

  /** What of a lap is waited for, in a few words; empty where there are none. */
  public static Optional<String> waitsFor(Fault fault, String detail) {
    String key = "waits." + fault.name();
    return WORDS.has(key) ? Optional.of(say(key, detail)) : Optional.empty();
  }

  /** Clock time to the minute. */
  public static String clock(ZonedDateTime at) {
    return CLOCK.format(at);
  }

  /** "Saved 11:44:07". */
  public static String saved(ZonedDateTime at) {
    return say("saved", RideWords.clock(at));
  }

  /** Minutes and seconds of a countdown, never below nought. */
  public static String countdown(Duration left) {
    long seconds = Math.max(0, (left.toMillis() + 999) / 1000);
    return String.format(Locale.ROOT, "%d:%02d", seconds / 60, seconds % 60);
  }

  /** The steps where the plan names none: the same for every setup. */
  public static List<String> steps() {
    List<String> steps = new ArrayList<>();
    for (int i = 1; WORDS.has("step." + i); i++) {
      steps.add(WORDS.say("step." + i));
    }
    return steps;
  }

  /** The aim of a setting with its tolerance and number of readings. */
  public static String aim(Setting setting) {
    BigDecimal tolerance = setting.tolerance();
    String aim =
        tolerance == null
            ? setting.shown()
            : say("aim", setting.shown(), tolerance.toPlainString());
    return setting.readings() > 1 ? say("aim.readings", aim, setting.readings()) : aim;
  }

  /** By how much and which way a setting lies outside its tolerance. */
  public static String outside(Setting setting, @Nullable BigDecimal by) {
    if (by == null) {
      return say("outside.words", setting.shown());
    }
    String size =
        by.abs().stripTrailingZeros().toPlainString()
            + (setting.unit().isBlank() ? "" : " " + setting.unit());
    return say(by.signum() > 0 ? "outside.above" : "outside.below", size, setting.shown());
  }

  /** A setting as a page shows it, with what an entry says of it. */
  public static SettingRow row(Setting setting, HelperEntry entry) {
    Optional<HelperEntry.Outside> outside = entry.outside(setting.name());
    return new SettingRow(
        setting.name(),
        aim(setting),
        entry.measured().getOrDefault(setting.name(), ""),
        outside.map(o -> outside(setting, o.by())).orElse(""),
        outside.map(HelperEntry.Outside::reason).orElse(""));
  }

  /** The safety list with what of it is confirmed. */
  public static List<SafetyRow> safety(Set<SafetyCheck> confirmed) {
    return Arrays.stream(SafetyCheck.values())
        .map(
            check ->
                new SafetyRow(
                    check.name(),
                    say("key." + check),
                    say("check." + check),
                    confirmed.contains(check)))
        .toList();
  }

  /** A limit as it was typed in from the maker's manual. */
  public static String limit(Setup.Limit limit) {
    return say("limit", limit.what(), limit.value(), limit.source());
  }

  /** How late the day runs. */
  public static String late(Duration late) {
    long minutes = late.toMinutes();
    return minutes < 1 ? say("on.time") : say("late", minutes);
  }

  /** The same, as the end of a line. */
  public static String lateLine(Duration late) {
    long minutes = late.toMinutes();
    return minutes < 1 ? say("line.on.time") : say("line.late", minutes);
  }

  /** What to drop when the day no longer fits; empty if it fits. */
  public static String drop(
      Plan plan, ZonedDateTime end, ZonedDateTime limit, boolean withoutRests, int mostStints) {
    if (!end.isAfter(limit)) {
      return "";
    }
    TellingRun run = plan.telling();
    return withoutRests
        ? say("drop.rests", clock(end), clock(limit))
        : run == null
            ? say("drop.stints", clock(end), clock(limit), mostStints)
            : say("drop.trials", clock(end), clock(limit), mostStints / run.task().laps());
  }

  /** From where on the day may end and still show something. */
  public static String earliest(int stint, double smallestP) {
    return stint == 0
        ? say("earliest.never")
        : smallestP <= LEVEL ? say("earliest", stint) : say("earliest.never");
  }
}

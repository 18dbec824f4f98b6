package blindlap.wording;

import blindlap.plan.Handling;
import blindlap.plan.Handlings;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.plan.Setup;
import blindlap.plan.StepsDay;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** How the level of one setting is set, in words for the helper, and for the tester beforehand. */
public final class HandlingWords {
  private static final Words WORDS = Words.of("handling");

  private HandlingWords() {}

  /**
   * What to do, in order; empty where its setups are no levels.
   *
   * @param from index of the level that is really on; null where nobody knows
   * @param to index of the level to set
   */
  public static List<String> steps(Plan plan, @Nullable Integer from, int to) {
    Handling handling = Handling.of(plan, from, to).orElse(null);
    if (handling == null) {
      return List.of();
    }
    Setup level = plan.setups().get(to);
    List<String> steps = new ArrayList<>(List.of(WORDS.say("away")));
    if (handling instanceof Handling.Clicks clicks) {
      clicks(steps, clicks, level.name());
    } else if (handling instanceof Handling.Pressure pressure) {
      steps.add(WORDS.say("pressure.low", typed(plan, pressure.low())));
      steps.add(WORDS.say("pressure.high", typed(plan, pressure.high())));
      steps.add(WORDS.say("pressure.to", level.name()));
    } else {
      steps.add(WORDS.say("refit.off"));
      steps.addAll(level.steps());
      steps.add(WORDS.say("refit.on", level.name()));
    }
    if (!(handling instanceof Handling.Refit)) {
      steps.addAll(level.steps());
    }
    steps.add(WORDS.say("cycle"));
    steps.add(WORDS.say("last"));
    return steps;
  }

  private static void clicks(List<String> steps, Handling.Clicks clicks, String level) {
    if (clicks.first()) {
      steps.add(WORDS.say("clicks.first"));
    } else {
      steps.add(
          clicks.in() == 0 ? WORDS.say("clicks.in.none") : WORDS.say("clicks.in", clicks.in()));
    }
    if (clicks.detour() > 0) {
      steps.add(WORDS.say("clicks.detour", clicks.detour()));
    }
    steps.add(
        clicks.out() == 0
            ? WORDS.say("clicks.out.none", level)
            : WORDS.say("clicks.out", clicks.out(), level));
    if (clicks.beside() > 0) {
      steps.add(WORDS.say("clicks.beside"));
    }
  }

  /** "26 clicks in all, as at every handling of the day"; empty where nothing is counted. */
  public static Optional<String> all(Plan plan, @Nullable Integer from) {
    return Handling.clicks(plan)
        .map(all -> WORDS.say(from == null ? "clicks.all.first" : "clicks.all", all));
  }

  /**
   * What comes off, in a sentence.
   *
   * @param form ".brief" for few words; else empty
   */
  public static String swap(Plan plan, @Nullable Integer from, boolean real, String form) {
    return from == null
        ? WORDS.say("swap.first" + form)
        : WORDS.say((real ? "swap.real" : "swap.dummy") + form, plan.setups().get(from).name());
  }

  /** The maker's limits of the setting, as they were typed in; empty where none were. */
  public static Optional<String> limits(Plan plan) {
    StepsDay day = plan.oneSetting();
    if (day == null || day.least() == null && day.most() == null) {
      return Optional.empty();
    }
    BigDecimal least = day.least();
    BigDecimal most = day.most();
    String key = most == null ? "limits.least" : least == null ? "limits.most" : "limits";
    String source = day.source().isBlank() ? WORDS.say("limits.source.none") : day.source();
    return Optional.of(
        WORDS.say(
            key,
            day.setting(),
            least == null ? "" : most == null ? typed(plan, least) : plain(least),
            most == null ? "" : typed(plan, most),
            source));
  }

  /** A row's way in few words, for a sheet of paper; empty where its setups are no levels. */
  public static String row(Plan plan, @Nullable Integer from, int to) {
    Handling handling = Handling.of(plan, from, to).orElse(null);
    if (handling instanceof Handling.Clicks clicks) {
      String way =
          clicks.first()
              ? WORDS.say("row.clicks.first", clicks.detour(), clicks.out())
              : WORDS.say("row.clicks", clicks.in(), clicks.detour(), clicks.out());
      return clicks.beside() > 0 ? WORDS.say("row.beside", way) : way;
    }
    if (handling instanceof Handling.Pressure pressure) {
      return WORDS.say(
          "row.pressure", plain(pressure.low()), plain(pressure.high()), plain(pressure.to()));
    }
    return "";
  }

  /** What goes for every handling, for a sheet of paper. */
  public static List<String> every(Plan plan) {
    StepsDay day = plan.oneSetting();
    if (day == null) {
      return List.of();
    }
    String key = "every." + PlanJson.word(day.way());
    return List.of(WORDS.say("every") + " " + WORDS.say(key, Handling.clicks(plan).orElse(0)));
  }

  /** All that is fixed of the one setting beside its levels, for whoever signs the plan. */
  public static List<String> signed(Plan plan) {
    StepsDay day = plan.oneSetting();
    if (day == null) {
      return List.of();
    }
    List<String> names = plan.setups().stream().map(Setup::name).toList();
    List<String> lines = new ArrayList<>();
    lines.add(WORDS.say("signed", day.setup(), day.setting(), StepsDay.range(names)));
    lines.add(limits(plan).map(words -> words + ".").orElseGet(() -> WORDS.say("limits.none")));
    lines.addAll(planned(plan));
    return lines;
  }

  /** What the handlings of the day come to, for whoever plans it; empty for other plans. */
  public static List<String> planned(Plan plan) {
    StepsDay day = plan.oneSetting();
    if (day == null || Handling.of(plan, null, 0).isEmpty()) {
      return List.of();
    }
    int handlings = Handlings.of(plan).day();
    int clicks = Handling.clicks(plan).orElse(0);
    BigDecimal low = day.low();
    BigDecimal high = day.high();
    return List.of(
        WORDS.say(
            "plan." + PlanJson.word(day.way()),
            clicks,
            handlings,
            clicks * handlings,
            low == null ? "" : typed(plan, low),
            high == null ? "" : typed(plan, high)),
        WORDS.say("plan.dummy"));
  }

  private static String plain(BigDecimal value) {
    return String.valueOf(PlanJson.number(value));
  }

  private static String typed(Plan plan, BigDecimal value) {
    StepsDay day = plan.oneSetting();
    String unit = day == null ? "" : day.unit();
    return plain(value) + (unit.isBlank() ? "" : " " + unit);
  }
}

package blindlap.wording;

import blindlap.plan.DayAnswer;
import blindlap.plan.NoiseKnown;
import blindlap.plan.Plan;
import blindlap.plan.Schedule;
import blindlap.stats.power.VerdictOdds;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;

/**
 * What the tester asked for, and how far a day gives it: how often a difference of the declared
 * size is shown to be one at all, how often to be larger than declared, and the least plan that
 * does.
 */
final class RequestWords {
  private static final Words WORDS = Words.of("answer");

  /** Places among the endings of the declared difference and of twice as much. */
  private static final int JUST = 1;

  private static final int TWICE = 3;

  private final Plan plan;
  private final DayAnswer day;
  private final String declared;
  private final DoubleFunction<String> amount;

  /**
   * @param declared the worthwhile difference with its unit
   * @param amount a difference with its unit
   */
  RequestWords(Plan plan, DayAnswer day, String declared, DoubleFunction<String> amount) {
    this.plan = plan;
    this.day = day;
    this.declared = declared;
    this.amount = amount;
  }

  List<String> lines() {
    if (Double.isNaN(day.worthwhile())) {
      return List.of(WORDS.say("no.worthwhile"));
    }
    if (day.noise().kind() == NoiseKnown.Kind.UNKNOWN) {
      return List.of();
    }
    List<String> lines = new ArrayList<>();
    chances().ifPresent(lines::add);
    lines.add(least().orElseGet(this::none));
    return lines;
  }

  /** How often the day differs from nothing, and how often by more than was declared. */
  private Optional<String> chances() {
    if (day.odds().size() <= TWICE) {
      return Optional.empty();
    }
    VerdictOdds just = day.odds().get(JUST).odds();
    VerdictOdds twice = day.odds().get(TWICE).odds();
    double error = Math.max(just.error(), twice.error());
    return Optional.of(
        WORDS.say(
            "request.chances",
            declared,
            days(just.real()),
            days(just.worthwhile()),
            amount.apply(day.odds().get(TWICE).difference()),
            days(twice.real()),
            days(twice.worthwhile()),
            error == 0
                ? WORDS.say("request.formula")
                : WORDS.say("request.error", Figures.number(200 * error, 1))));
  }

  private static String days(double share) {
    return Figures.number(100 * share, 0);
  }

  /** The least plan that meets the request; empty if there is none. */
  Optional<String> least() {
    return day.least().map(this::least);
  }

  private String least(DayAnswer.Least least) {
    boolean own = least.protocol().equals(plan.protocol());
    String wanted = declared;
    if (own && least.stints() == plan.stints()) {
      return WORDS.say(day.showsWorthwhile() ? "request.this" : "request.nearly", wanted);
    }
    String which =
        own
            ? WORDS.say("request.own", least.stints())
            : WORDS.say("request.other", least.stints(), least.protocol().title());
    if (day.showsWorthwhile()) {
      return least.stints() <= plan.stints()
          ? WORDS.say("request.smaller", wanted, which)
          : WORDS.say("request.shows", wanted);
    }
    String series = day.days().isPresent() ? series() : "";
    if (plan.timetable() == null) {
      return WORDS.say("request.least", wanted, which, series);
    }
    Plan other = plan.with(least.protocol(), least.stints());
    boolean fits = least.stints() <= Schedule.mostStints(other);
    return fits
        ? WORDS.say("request.fits", wanted, which)
        : WORDS.say("request.beyond", wanted, which, series);
  }

  private String series() {
    return WORDS.say("request.series", day.days().getAsInt());
  }

  private String none() {
    String wanted = declared;
    if (plan.setups().size() > 2) {
      return WORDS.say("request.none.pairs", wanted);
    }
    return day.days().isPresent()
        ? WORDS.say("request.none.series", wanted, day.days().getAsInt())
        : WORDS.say("request.none", wanted);
  }
}

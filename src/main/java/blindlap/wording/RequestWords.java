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
import java.util.function.ToDoubleFunction;

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
  private final boolean plain;

  /**
   * @param declared the worthwhile difference with its unit
   * @param amount a difference with its unit
   */
  RequestWords(Plan plan, DayAnswer day, String declared, DoubleFunction<String> amount) {
    this(plan, day, declared, amount, false);
  }

  /**
   * @param plain true for the sentences of the Plan page, which need no statistics
   */
  RequestWords(
      Plan plan, DayAnswer day, String declared, DoubleFunction<String> amount, boolean plain) {
    this.plain = plain;
    this.plan = plan;
    this.day = day;
    this.declared = declared;
    this.amount = amount;
  }

  List<String> lines() {
    if (Double.isNaN(day.worthwhile())) {
      return List.of(say("no.worthwhile"));
    }
    if (day.noise().kind() == NoiseKnown.Kind.UNKNOWN) {
      return List.of();
    }
    List<String> lines = new ArrayList<>();
    chances().ifPresent(lines::add);
    lines.add(least().orElseGet(this::none));
    return lines;
  }

  private String say(String key, Object... arguments) {
    return StepsAnswer.say(
        plan, plain && WORDS.has("plain." + key) ? "plain." + key : key, arguments);
  }

  /** How often the day differs from nothing, and how often by more than was declared. */
  Optional<String> chances() {
    if (day.odds().size() <= TWICE) {
      return Optional.empty();
    }
    DayAnswer.Ending just = day.odds().get(JUST);
    DayAnswer.Ending twice = day.odds().get(TWICE);
    double error = Math.max(just.odds().error(), twice.odds().error());
    return Optional.of(
        say(
            "request.chances",
            declared,
            days(just, VerdictOdds::real),
            days(just, VerdictOdds::worthwhile),
            amount.apply(twice.difference()),
            days(twice, VerdictOdds::real),
            days(twice, VerdictOdds::worthwhile),
            error == 0
                ? say("request.formula")
                : say("request.error", Figures.number(200 * error, 1))));
  }

  private static String days(DayAnswer.Ending ending, ToDoubleFunction<VerdictOdds> share) {
    return SplitWords.range(
        Figures.number(100 * share.applyAsDouble(ending.odds()), 0),
        Figures.number(100 * share.applyAsDouble(ending.best()), 0));
  }

  /** The least plan that meets the request; empty if there is none. */
  Optional<String> least() {
    return day.least().map(this::least);
  }

  private String least(DayAnswer.Least least) {
    boolean own = least.protocol().equals(plan.protocol());
    String wanted = declared;
    if (own && least.stints() == plan.stints()) {
      return say(day.showsWorthwhile() ? "request.this" : "request.nearly", wanted);
    }
    String which =
        own
            ? say("request.own", least.stints())
            : say("request.other", least.stints(), least.protocol().title());
    if (day.showsWorthwhile()) {
      return least.stints() <= plan.stints()
          ? say("request.smaller", wanted, which)
          : say("request.shows", wanted);
    }
    String series = day.days().isPresent() && !inSeries() ? series() : "";
    if (plan.timetable() == null) {
      return say("request.least", wanted, which, series);
    }
    Plan other = plan.with(least.protocol(), least.stints());
    boolean fits = least.stints() <= Schedule.mostStints(other);
    return fits ? say("request.fits", wanted, which) : say("request.beyond", wanted, which, series);
  }

  private String series() {
    return say("request.series", day.days().getAsInt());
  }

  /** Inside a declared series nobody is sent to one: what it can show is said for itself. */
  private boolean inSeries() {
    return plan.series() != null && plan.seriesSessions() != null;
  }

  private String none() {
    String wanted = declared;
    if (!plan.oneDifference()) {
      return say("request.none.pairs", wanted);
    }
    if (inSeries()) {
      return say("request.none.inside", wanted);
    }
    return day.days().isPresent()
        ? say("request.none.series", wanted, day.days().getAsInt())
        : say("request.none", wanted);
  }
}

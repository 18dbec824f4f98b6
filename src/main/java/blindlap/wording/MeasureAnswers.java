package blindlap.wording;

import blindlap.plan.DayAnswer;
import blindlap.plan.DeclaredNoise;
import blindlap.plan.EarlierNoise;
import blindlap.plan.Measure;
import blindlap.plan.MeasureShows;
import blindlap.plan.Plan;
import blindlap.stats.distribution.Interval;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** What a day can show in each of its measures: one table, and what is to be said beside it. */
public final class MeasureAnswers {
  private static final Words WORDS = Words.of("answer");

  private final Plan plan;
  private final Optional<DayAnswer> answer;
  private final EarlierNoise earlier;

  /**
   * The words of a plan with measures beside the primary; nothing for others.
   *
   * @param earlier what earlier days tell of the noise of the other measures
   */
  public MeasureAnswers(Plan plan, Optional<DayAnswer> answer, EarlierNoise earlier) {
    this.plan = plan;
    this.earlier = earlier;
    this.answer = answer.filter(day -> !day.never() && !day.measures().isEmpty());
  }

  /** Heads of the columns. */
  public static List<String> heads() {
    return List.of(
        WORDS.say("measures.measure"), WORDS.say("measures.role"), WORDS.say("measures.shows"));
  }

  /** A row a measure, the primary first. */
  public List<List<String>> rows() {
    List<List<String>> rows = new ArrayList<>();
    answer.ifPresent(
        day -> {
          plan.primary()
              .ifPresent(
                  primary ->
                      rows.add(
                          List.of(
                              primary.name(),
                              WORDS.say("measures.PRIMARY"),
                              WORDS.say("measures.shown", primary(day)))));
          day.measures().forEach(m -> rows.add(row(m)));
        });
    return rows;
  }

  private String primary(DayAnswer day) {
    return new AnswerWords(plan, answer).shown(day.chosen().difference());
  }

  private List<String> row(MeasureShows shows) {
    Measure measure = shows.measure();
    return List.of(measure.name(), WORDS.say("measures." + measure.role()), shown(shows));
  }

  private String shown(MeasureShows shows) {
    if (Double.isNaN(shows.units())) {
      return WORDS.say("measures.never");
    }
    String much =
        sized(shows)
            .map(sized -> amount(shows.measure(), sized))
            .orElseGet(() -> WORDS.say("measures.own", Figures.near(shows.units())));
    return beyond(shows) > 0
        ? WORDS.say("measures.harm", Sizes.worthwhile(shows.measure()), much)
        : WORDS.say("measures.shown", much);
  }

  /** What a watched harm must exceed; 0 for three and more setups, which need only differ. */
  private double beyond(MeasureShows shows) {
    BigDecimal worthwhile = shows.measure().worthwhile();
    return shows.measure().role() == Measure.Role.WATCH_FOR_HARM
            && plan.oneDifference()
            && worthwhile != null
            && !Sizes.worthwhile(shows.measure()).isEmpty()
        ? worthwhile.doubleValue()
        : 0;
  }

  private Optional<DeclaredNoise> noise(MeasureShows shows) {
    return earlier.of(shows.measure(), plan.laps().scored());
  }

  private Optional<MeasureShows.Sized> sized(MeasureShows shows) {
    return noise(shows).flatMap(noise -> shows.at(noise, plan.laps().scored(), beyond(shows)));
  }

  private static String amount(Measure measure, MeasureShows.Sized sized) {
    String most = Figures.near(sized.difference());
    return SplitWords.range(Figures.alike(sized.best(), most), most)
        + " "
        + NoiseWords.unit(measure);
  }

  private static String amount(Measure measure, double size) {
    return Figures.near(size) + " " + NoiseWords.unit(measure);
  }

  /** Where the noise of a measure is from, and what its interval makes of the answer. */
  private Optional<String> source(MeasureShows shows) {
    Measure measure = shows.measure();
    return sized(shows)
        .map(
            sized -> {
              DeclaredNoise noise = noise(shows).orElseThrow();
              Interval range = Objects.requireNonNull(sized.range());
              return WORDS.say(
                  beyond(shows) > 0 ? "measures.source.harm" : "measures.source",
                  measure.name(),
                  amount(measure, noise.sd().doubleValue()),
                  noise.source(),
                  Figures.near(range.low()),
                  amount(measure, range.high()),
                  Objects.requireNonNull(noise.df()) + 1);
            });
  }

  /** The table in sentences, where there is no room for one. */
  public List<String> lines() {
    return rows().stream().map(row -> WORDS.say("measures.row", row.toArray())).toList();
  }

  /** How far the table can be trusted, and how many watched measures the orders can carry. */
  public List<String> notes() {
    List<String> notes = new ArrayList<>();
    answer.ifPresent(
        day -> {
          List<String> sources =
              day.measures().stream().flatMap(shows -> source(shows).stream()).toList();
          String known =
              sources.isEmpty() ? "" : sources.size() < day.measures().size() ? ".some" : ".all";
          if (plan.steps() != null) {
            notes.add(WORDS.say("measures.note.steps"));
          }
          notes.add(
              WORDS.say((plan.oneDifference() ? "measures.note" : "measures.note.pairs") + known));
          notes.addAll(sources);
          long watched =
              day.measures().stream()
                  .filter(m -> m.measure().role() == Measure.Role.WATCH_FOR_HARM)
                  .count();
          if (watched > 0 && plan.oneDifference()) {
            int most = MeasureShows.mostWatched(day.orders().count());
            notes.add(WORDS.say(watched > most ? "watch.over" : "watch.carry", watched, most));
            if (watched > MeasureShows.MANY_WATCHED) {
              notes.add(WORDS.say("watch.many", watched));
            }
          }
        });
    return notes;
  }
}

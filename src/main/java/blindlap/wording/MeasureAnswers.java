package blindlap.wording;

import blindlap.plan.DayAnswer;
import blindlap.plan.Measure;
import blindlap.plan.MeasureShows;
import blindlap.plan.Plan;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a day can show in each of its measures: one table, and what is to be said beside it. */
public final class MeasureAnswers {
  private static final Words WORDS = Words.of("answer");

  private final Plan plan;
  private final Optional<DayAnswer> answer;

  /** The words of a plan with measures beside the primary; nothing for others. */
  public MeasureAnswers(Plan plan, Optional<DayAnswer> answer) {
    this.plan = plan;
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
    return new AnswerWords(plan, answer).amount(day.chosen().difference());
  }

  private List<String> row(MeasureShows shows) {
    Measure measure = shows.measure();
    return List.of(measure.name(), WORDS.say("measures." + measure.role()), shown(shows));
  }

  private String shown(MeasureShows shows) {
    if (Double.isNaN(shows.units())) {
      return WORDS.say("measures.never");
    }
    String units = WORDS.say("measures.own", Figures.near(shows.units()));
    String declared = Sizes.worthwhile(shows.measure());
    return shows.measure().role() == Measure.Role.WATCH_FOR_HARM
            && plan.setups().size() == 2
            && !declared.isEmpty()
        ? WORDS.say("measures.harm", declared, units)
        : WORDS.say("measures.shown", units);
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
          notes.add(WORDS.say(plan.setups().size() == 2 ? "measures.note" : "measures.note.pairs"));
          long watched =
              day.measures().stream()
                  .filter(m -> m.measure().role() == Measure.Role.WATCH_FOR_HARM)
                  .count();
          if (watched > 0 && plan.setups().size() == 2) {
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

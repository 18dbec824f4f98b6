package blindlap.screen.review;

import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.session.day.Trial;
import blindlap.wording.Headline;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * The trials of a telling run on the blind review: which count, and nothing of what was answered. A
 * trial was void before its answer or not at all, so that nothing is decided here.
 */
final class BlindTrials {
  private static final Words WORDS = Words.of("review");

  private BlindTrials() {}

  /**
   * One trial.
   *
   * @param number from 1
   * @param codes of its laps
   * @param standing whether it counts, in words
   * @param notes of its laps; may be empty
   */
  public record Row(int number, String codes, String standing, String notes) {}

  /** The trials of a session in ridden order; none of any other kind. */
  static List<Row> of(SessionState state) {
    List<Row> rows = new ArrayList<>();
    for (Trial trial : Trial.of(state.day())) {
      rows.add(
          new Row(
              trial.number(),
              stints(trial).mapToObj(stint -> String.valueOf(state.code(stint))).collect(joined()),
              standing(trial),
              stints(trial)
                  .mapToObj(stint -> state.lap(new LapId(stint, 1)).map(LapState::note).orElse(""))
                  .filter(note -> !note.isBlank())
                  .collect(Collectors.joining("; "))));
    }
    return rows;
  }

  private static java.util.stream.Collector<CharSequence, ?, String> joined() {
    return Collectors.joining(" \u00b7 ");
  }

  private static IntStream stints(Trial trial) {
    return IntStream.rangeClosed(trial.first(), trial.last());
  }

  private static String standing(Trial trial) {
    return switch (trial.standing()) {
      case ANSWERED -> WORDS.say("trial.answered");
      case VOID -> WORDS.say("trial.void", trial.voided().orElseThrow().text());
      case OPEN -> WORDS.say(trial.ridden() ? "trial.unanswered" : "trial.unridden");
    };
  }

  /** How many count, in the largest sentence. */
  static Headline answer(SessionState state) {
    List<Trial> trials = Trial.of(state.day());
    long answered = count(trials, Trial.Standing.ANSWERED);
    return new Headline(
        "",
        WORDS.say("trials.answered", answered, trials.size()),
        WORDS.say(
            "trials.rest", count(trials, Trial.Standing.VOID), count(trials, Trial.Standing.OPEN)));
  }

  private static long count(List<Trial> trials, Trial.Standing standing) {
    return trials.stream().filter(trial -> trial.standing() == standing).count();
  }
}

package blindlap.wording;

import blindlap.plan.DayDetail;
import blindlap.plan.LooksShow;
import blindlap.plan.Plan;
import blindlap.stats.look.PlannedLooks;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What the looks of a plan are and what they save. */
public final class LooksShowWords {
  private static final Words WORDS = Words.of("answer");

  private LooksShowWords() {}

  /** After which stints the program looks; empty where it does not before the end. */
  public static Optional<String> declared(Plan plan) {
    return plan.looks().isEmpty()
        ? Optional.empty()
        : Optional.of(WORDS.say("looks", StintList.words(plan.looks())));
  }

  /** The looks, those that can never stop the day, and what they save, a sentence each. */
  public static List<String> lines(Plan plan, DayDetail detail) {
    List<String> lines = new ArrayList<>();
    detail
        .looks()
        .ifPresent(
            looks -> {
              declared(plan).ifPresent(lines::add);
              looks.never().forEach(stint -> lines.add(WORDS.say("looks.never", stint)));
              lines.add(save(plan, looks));
            });
    return lines;
  }

  private static String save(Plan plan, LooksShow looks) {
    PlannedLooks.Simulated found = looks.simulated();
    return WORDS.say(
        "looks.save",
        Figures.number(looks.times(), 1),
        Figures.number(found.meanStints(), 0),
        plan.stints(),
        Figures.number(100 * found.shown(), 0),
        Figures.number(100 * found.without(), 0),
        found.days(),
        Figures.number(200 * found.error(found.shown()), 1));
  }
}

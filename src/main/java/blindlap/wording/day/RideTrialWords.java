package blindlap.wording.day;

import blindlap.plan.Plan;
import blindlap.plan.TellingRun;
import blindlap.session.day.Day;
import blindlap.session.day.LapId;
import blindlap.session.day.Trial;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** What the Ride page and phones say of the trials of a telling run. Nothing hangs on the order. */
public final class RideTrialWords {
  /** So many trials are named by their numbers; of more it is said how many. */
  private static final int NAMED = 8;

  private RideTrialWords() {}

  /** "Trial 4 of 15, lap 2 of 3". */
  public static String headline(TellingRun run, int stint) {
    return RideWords.say(
        "trial.headline", run.trial(stint), run.trials(), run.place(stint), run.task().laps());
  }

  /** The laps of a trial, "lap 1" first. */
  public static List<String> laps(TellingRun run) {
    return IntStream.rangeClosed(1, run.task().laps())
        .mapToObj(lap -> RideWords.say("trial.lap", lap))
        .toList();
  }

  /** A lap as it is spoken of: its number over the day, or "2 of trial 4". */
  public static String lap(Plan plan, LapId lap) {
    TellingRun run = plan.telling();
    return run == null
        ? String.valueOf(lap.ofDay(plan.laps().perStint()))
        : RideWords.say("trial.lap.of", run.place(lap.stint()), run.trial(lap.stint()));
  }

  /** What is asked after the last lap of every trial. */
  public static String question(TellingRun run) {
    return RideWords.say("trial.question." + run.task(), run.attribute());
  }

  /** What stands in the place of open answers where a lap has none to give. */
  public static String nothingAsked(TellingRun run, boolean last) {
    return last ? RideWords.say("trial.asks.no.more") : before(run);
  }

  /** What is said at a lap before a trial's last. */
  public static String before(TellingRun run) {
    return RideWords.say("trial.before", run.task().laps());
  }

  /** Asks whether the rider is done with a trial's last lap though its answer is open. */
  public static String doneOpen(int trial, List<String> open) {
    return RideWords.say("trial.done.open", String.join("; ", open), trial);
  }

  /** What is said of a trial once a lap of it is done. */
  public static String done(Trial trial, boolean last) {
    String key =
        trial.voided().isPresent()
            ? "void"
            : !last ? "lap" : trial.answer().isPresent() ? "answered" : "unanswered";
    return RideWords.say("trial.done." + key, trial.number());
  }

  /** What a void does to a trial, or that it was taken back. */
  public static String voided(int trial, boolean back) {
    return RideWords.say(back ? "trial.void.back.done" : "trial.void.done", trial);
  }

  /** What a day that is closed now leaves out, in a sentence; empty if it is whole. */
  public static String missing(Day day) {
    return day.plan().telling() == null
        ? day.nextLap().map(lap -> RideWords.missing(day)).orElse("")
        : unanswered(day);
  }

  /** Trials that do not count as they stand. */
  private static String unanswered(Day day) {
    List<Integer> open =
        Trial.of(day).stream()
            .filter(trial -> trial.standing() == Trial.Standing.OPEN)
            .map(Trial::number)
            .toList();
    return open.isEmpty()
        ? ""
        : open.size() > NAMED
            ? RideWords.say(
                "trial.missing.many", numbers(open.subList(0, NAMED)), open.size() - NAMED)
            : RideWords.say("trial.missing", numbers(open), open.size());
  }

  private static String numbers(List<Integer> trials) {
    return trials.stream().map(String::valueOf).collect(Collectors.joining(", "));
  }

  /** What a run cut short after a lap has left, said at once. */
  public static String cutShort(Day day, TellingRun run) {
    int answered =
        (int)
            Trial.of(day).stream()
                .filter(trial -> trial.standing() == Trial.Standing.ANSWERED)
                .count();
    return RideWords.say(run.canShow(answered) ? "trial.cut.can" : "trial.cut.cannot", answered);
  }
}

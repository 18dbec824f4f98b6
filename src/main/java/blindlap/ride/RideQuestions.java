package blindlap.ride;

import blindlap.plan.BlindLevel;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Setup;
import blindlap.plan.StepsDay;
import blindlap.plan.TellingRun;
import blindlap.session.day.Guess;
import blindlap.session.day.VoidEvent;
import blindlap.timing.TimeRecord;
import blindlap.wording.day.RideTrialWords;
import blindlap.wording.day.RideWords;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What the score sheet asks, in the order of the plan. The same for every lap of a session.
 *
 * @param place trail and rider
 * @param plate what the number is asked or said to be on
 * @param questions scales and counts; times have their watch
 * @param setups the setups a guess may name; in a telling run the laps of a trial
 * @param riderKnows true where the rider is told what to mount: nobody need say who knows it
 * @param labels true where the rider is told a label, and may learn which part bears it
 * @param trials the trials of a telling run, whose answer names a lap; null of any other session
 */
public record RideQuestions(
    String place,
    String plate,
    List<Question> questions,
    List<String> setups,
    boolean riderKnows,
    boolean labels,
    @Nullable TellingRun trials) {
  /** How a question is answered. */
  public enum Kind {
    LINE,
    CATEGORY,
    COUNT
  }

  /**
   * A question.
   *
   * @param name as on the score sheet
   * @param kind how it is answered
   * @param low words at the low end
   * @param high words at the high end
   */
  public record Question(String name, Kind kind, String low, String high) {}

  /**
   * One of a fixed list.
   *
   * @param key its name in the program
   * @param words its name on the page
   */
  public record Choice(String key, String words) {}

  static final RideQuestions NONE =
      new RideQuestions("", "", List.of(), List.of(), false, false, null);

  public RideQuestions {
    questions = List.copyOf(questions);
    setups = List.copyOf(setups);
  }

  /** What a plan asks. */
  public static RideQuestions of(Plan plan) {
    List<Question> questions = new ArrayList<>();
    for (Measure measure : plan.askedOnTheDay()) {
      kind(measure)
          .map(kind -> new Question(measure.name(), kind, measure.lowWords(), measure.highWords()))
          .ifPresent(questions::add);
    }
    return new RideQuestions(
        RideWords.say(place(plan.blinding().level()), plan.trail(), plan.rider()),
        RideWords.plate(plan.level()),
        questions,
        answers(plan),
        plan.blinding().level().shown(),
        plan.level() == BlindLevel.MASKED,
        plan.telling());
  }

  /** The first answer that can be picked, from 0: the reference lap of a duo-trio cannot. */
  public int firstAnswer() {
    return trials == null ? 0 : trials.task().firstNamed() - 1;
  }

  /** The question above a sheet; in a telling run that of the trial, or when it comes. */
  public String title(RideSheet now) {
    if (trials == null || !now.guessAsked() && !questions.isEmpty()) {
      return RideWords.say("question");
    }
    return now.guessAsked()
        ? RideTrialWords.question(trials)
        : RideTrialWords.nothingAsked(trials, now.endsTrial());
  }

  /** True if one answer must be picked: there is no "don't know". */
  public boolean forced() {
    return trials != null;
  }

  /**
   * What a guess can be: a setup, on a steps day the end that the level is nearer to, in a telling
   * run a lap.
   */
  private static List<String> answers(Plan plan) {
    if (plan.telling() != null) {
      return RideTrialWords.laps(plan.telling());
    }
    return plan.steps() == null
        ? plan.setups().stream().map(Setup::name).toList()
        : Arrays.stream(StepsDay.End.values())
            .map(end -> RideWords.say("guess.end." + end))
            .toList();
  }

  /** How much the rider knows of what is on. */
  private static String place(BlindLevel level) {
    return switch (level) {
      case OPEN -> "place.unblinded";
      case DRAWN -> "place.drawn";
      case MASKED -> "place.masked";
      case PREPARED, HELPER -> "place";
    };
  }

  /** How a measure is asked; empty for times, which have their watch. */
  private static Optional<Kind> kind(Measure measure) {
    return switch (measure.kind()) {
      case LINE_SCALE -> Optional.of(Kind.LINE);
      case CATEGORY_SCALE -> Optional.of(Kind.CATEGORY);
      case COUNT -> Optional.of(Kind.COUNT);
      case LAP_TIME, SECTOR_TIME -> Optional.empty();
    };
  }

  private static List<Choice> choices(Enum<?>[] options, String group) {
    return Arrays.stream(options)
        .map(o -> new Choice(o.name(), RideWords.say(group + "." + o.name())))
        .toList();
  }

  /** Who may hold a watch. */
  public static List<Choice> timekeepers() {
    return choices(TimeRecord.TimedBy.values(), "timed.by");
  }

  /** How sure a guess may be. */
  public static List<Choice> sureness() {
    return choices(Guess.Sureness.values(), "sure");
  }

  /** Events that spoil a lap. */
  public static List<Choice> events() {
    return choices(VoidEvent.values(), "event");
  }
}

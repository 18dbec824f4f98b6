package blindlap.ride;

import blindlap.plan.TellingRun;
import blindlap.session.day.Day;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.Trial;
import blindlap.wording.day.RideTrialWords;
import blindlap.wording.day.RideWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Being done with a lap. What is still open then is asked about once, by name; the lap that was
 * done last may be opened again until something of the next one is recorded.
 */
public final class RideDone {
  private final RideHand hand;
  private Optional<LapId> done = Optional.empty();
  private Optional<LapId> again = Optional.empty();
  private List<String> asked = List.of();

  RideDone(RideHand hand) {
    this.hand = hand;
  }

  void clear() {
    done = Optional.empty();
    again = Optional.empty();
    withdraw();
  }

  /** What is asked of the rider on a day as it stands. */
  RideSheet sheet(Day day) {
    return RideSheet.of(day, done, again);
  }

  /** A lap is done: the page speaks of it until the rider goes on. */
  void with(LapId lap) {
    done = Optional.of(lap);
    again = Optional.empty();
    withdraw();
  }

  /** Done was pressed: at once where nothing is open, else after the question. */
  public void press() {
    List<String> open = open(hand.questions(), hand.sheet());
    if (open.isEmpty()) {
      hand.lapDone();
      return;
    }
    asked = open;
    Trial trial = hand.sheet().trial();
    hand.ask(
        trial != null && open.contains(RideWords.say("trial.answer.name"))
            ? RideTrialWords.doneOpen(trial.number(), open)
            : RideWords.doneOpen(open));
  }

  /** Done with the lap as it stands, whatever is open. */
  public void asItIs() {
    hand.lapDone();
  }

  /** Back to the sheet: the question goes. */
  public void withdraw() {
    asked = List.of();
    hand.ask("");
  }

  /** An answer was given meanwhile: a question that no longer names what is open goes. */
  void look(RideSheet now) {
    if (!asked.isEmpty() && !asked.equals(open(hand.questions(), now))) {
      withdraw();
    }
  }

  /** What is open on a sheet, in words; empty where nothing is asked at this stage. */
  String words(RideSheet now) {
    TellingRun trials = hand.questions().trials();
    boolean scored = now.stage() == RideSheet.Stage.SCORED;
    if (scored && trials != null && hand.questions().questions().isEmpty() && !now.guessAsked()) {
      return ""; // the sheet says so above
    }
    return RideWords.open(now.stage().name(), answers(hand.questions(), now).size());
  }

  /** True if no further lap is to be ridden: the last one is, or the day was ended early. */
  public boolean last() {
    return hand.day().filter(day -> day.nextLap().isEmpty()).isPresent();
  }

  /** The lap that may be opened again; empty if none may. */
  public Optional<LapId> reopenable() {
    return again.isPresent() ? Optional.empty() : hand.day().flatMap(Day::reopenable);
  }

  /** A lap is on record as ridden by its answer: its sheet stays open until Done. */
  void stay(LapId lap) {
    if (done.isEmpty()) {
      again = Optional.of(lap);
    }
  }

  /** Opens the lap that was done last again. */
  public void openAgain() {
    Optional<LapId> lap = reopenable();
    if (lap.isPresent()) {
      again = lap;
      done = Optional.empty();
      hand.reload();
    }
  }

  /** What is open on a sheet, by name: watches that run, then answers in the order of the sheet. */
  static List<String> open(RideQuestions questions, RideSheet now) {
    List<String> open = new ArrayList<>();
    if (now.stage() != RideSheet.Stage.SCORED) {
      return open;
    }
    now.watches()
        .forEach(
            (measure, watch) -> {
              if (watch.state() == RideSheet.Watch.State.RUNNING) {
                open.add(RideWords.say("open.running", measure));
              }
            });
    open.addAll(answers(questions, now));
    return open;
  }

  /** Names of the answers that are open. */
  static List<String> answers(RideQuestions questions, RideSheet now) {
    List<String> open = new ArrayList<>();
    if (now.stage() != RideSheet.Stage.SCORED) {
      return open;
    }
    questions.questions().stream()
        .map(RideQuestions.Question::name)
        .filter(name -> !now.values().containsKey(name))
        .forEach(open::add);
    Guess guess = now.guess();
    if (now.guessAsked() && guess == null) {
      open.add(RideWords.say(questions.forced() ? "trial.answer.name" : "guess.name"));
    } else if (now.guessAsked()
        && guess != null
        && guess.setup() != null
        && guess.sureness() == null) {
      open.add(RideWords.say("sure.name"));
    }
    return open;
  }
}

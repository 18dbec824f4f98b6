package blindlap.phone;

import blindlap.desk.day.MeasureState;
import blindlap.plan.Covariate;
import blindlap.session.day.CovariateAt;
import blindlap.session.day.Day;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.PhoneRole;
import blindlap.session.day.VoidEvent;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.Map;
import java.util.Set;

/** Reads what a phone says to do; each role has its own. */
final class Acts {
  private static final Words WORDS = Words.of("phoneserver");

  private static final Set<String> BOTH =
      Set.of(
          "watch-start", "watch-reset", "watch-run-on", "time", "void", "void-back", "covariate");

  private static final Set<String> RIDER =
      Set.of(
          "plate",
          "handed-over",
          "warm-up",
          "score",
          "score-back",
          "note",
          "note-back",
          "guess",
          "guess-back",
          "ridden",
          "past-cap",
          "saw",
          "not-fit");

  private static final Set<String> STARTER = Set.of("conditions");

  private Acts() {}

  /** What a phone says of itself that this program cannot read. */
  static String notUnderstood() {
    return WORDS.say("not.understood");
  }

  /**
   * Reads an act.
   *
   * @param offset the laptop's clock less the phone's
   * @throws Turned if the role may not say it, or it cannot be read
   */
  static Act read(Given act, PhoneRole role, Duration offset, Day day) throws Turned {
    String word = act.text("do");
    Set<String> own = role == PhoneRole.RIDER ? RIDER : STARTER;
    Set<String> others = role == PhoneRole.RIDER ? STARTER : RIDER;
    if (others.contains(word) || !mayBeSaid(word, act, role, day)) {
      throw new Turned(Refusal.ROLE, Reply.why(403, "role"));
    }
    if (!own.contains(word) && !BOTH.contains(word)) {
      throw Turned.form();
    }
    return switch (word) {
      case "watch-start", "watch-reset", "watch-run-on", "time" ->
          WatchActs.read(word, act, offset, day);
      case "guess", "guess-back" -> GuessActs.read(word, act);
      case "score", "score-back", "note", "note-back" -> sheet(word, act, day);
      case "void", "void-back", "conditions", "covariate" -> lap(word, act);
      default -> step(word, act, day);
    };
  }

  /** What the plan has the rider say, only the rider says. */
  private static boolean mayBeSaid(String word, Given act, PhoneRole role, Day day) throws Turned {
    return !word.equals("covariate")
        || role == PhoneRole.RIDER
        || day.plan()
            .covariate(act.text("name"))
            .filter(each -> each.by() == Covariate.By.RIDER)
            .isEmpty();
  }

  private static Act sheet(String word, Given act, Day day) throws Turned {
    LapId lap = act.lap();
    if (word.equals("note")) {
      String text = act.text("text");
      return (days, id) -> days.note(id, lap, text);
    }
    if (word.equals("note-back")) {
      String from = act.text("from");
      String to = act.text("to");
      return (days, id) -> days.noteTakenBack(id, lap, from, to);
    }
    String measure = act.measure(day.plan(), false);
    if (word.equals("score")) {
      BigDecimal value = act.decimal("value");
      return (days, id) -> days.score(id, lap, measure, value, false);
    }
    BigDecimal from = act.decimal("from");
    MeasureState to = new MeasureState(act.maybeDecimal("to"), null, null);
    return (days, id) ->
        days.takeBack(
            id, lap, measure, standing(days.day(id).orElseThrow(), lap, measure, from), to);
  }

  /** What stands there, if it is the number that the phone means: 64 is 64.0. */
  private static MeasureState standing(Day day, LapId lap, String measure, BigDecimal from) {
    MeasureState now = MeasureState.of(day, lap, measure);
    BigDecimal value = now.value();
    return value != null && value.compareTo(from) == 0 ? now : new MeasureState(from, null, null);
  }

  private static Act lap(String word, Given act) throws Turned {
    if (word.equals("covariate")) {
      return covariate(act);
    }
    LapId lap = act.lap();
    if (word.equals("conditions")) {
      String name = act.text("name");
      String words = act.text("words");
      if (!LapInput.CONDITIONS.contains(name)) {
        throw Turned.form();
      }
      return (days, id) -> days.conditions(id, lap, Map.of(name, words));
    }
    VoidEvent event = act.one(VoidEvent.class, "event");
    if (word.equals("void-back")) {
      return (days, id) -> days.voidTakenBack(id, lap, event);
    }
    String words = act.maybe("words").orElse("");
    return (days, id) -> days.spoiled(id, lap, event, words);
  }

  private static Act covariate(Given act) throws Turned {
    int stint = act.small("stint");
    if (stint < 1) {
      throw Turned.form();
    }
    CovariateAt at = new CovariateAt(act.text("name"), stint, act.small("lap"));
    BigDecimal value = act.maybeDecimal("value");
    return (days, id) -> days.covariate(id, at, value);
  }

  private static Act step(String word, Given act, Day day) throws Turned {
    if (word.equals("warm-up")) {
      return (days, id) -> days.warmUp(id);
    }
    if (word.equals("ridden")) {
      LapId lap = act.lap();
      return (days, id) -> days.ridden(id, lap);
    }
    int stint = act.small("stint");
    return switch (word) {
      case "plate" -> (days, id) -> days.plateRead(id, stint);
      case "handed-over" -> (days, id) -> days.handedOver(id, stint);
      case "past-cap" -> {
        String reason = act.text("reason");
        yield (days, id) -> days.pastCap(id, stint, reason);
      }
      case "saw" -> {
        String what = act.text("what");
        yield (days, id) -> days.blindBroken(id, stint, what);
      }
      case "not-fit" -> {
        String words = act.maybe("words").orElse("").strip();
        String reason = words.isEmpty() ? WORDS.say("not.fit") : WORDS.say("not.fit.words", words);
        String rider = day.plan().rider();
        yield (days, id) -> days.cutShort(id, stint, reason, rider, false);
      }
      default -> throw Turned.form();
    };
  }
}

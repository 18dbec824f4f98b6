package blindlap.screen.review;

import blindlap.desk.Keys;
import blindlap.desk.LapFiles;
import blindlap.desk.Sessions;
import blindlap.fault.Problem;
import blindlap.fault.TypedNumber;
import blindlap.screen.part.Background;
import blindlap.session.DayCommands;
import blindlap.session.Outcome;
import blindlap.session.ReasonFor;
import blindlap.session.SessionFault;
import blindlap.session.SessionState;
import blindlap.session.TwoValues;
import blindlap.session.ValueChosen;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.session.day.Step;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import blindlap.wording.day.Words;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;

/**
 * The review while the key is sealed: laps by code, voids, corrections, closing, opening the key.
 */
public final class BlindReviewModel {
  private static final Words WORDS = Words.of("review");

  private final Sessions sessions;
  private final Keys keys;
  private final MasksModel masks;
  private final Background background;
  private final Runnable unsealed;
  private final Consumer<String> overtaken;
  private final ReadOnlyObjectWrapper<Optional<BlindReviewView>> view =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");

  private Optional<SessionState> state = Optional.empty();

  /**
   * @param unsealed called once the key is open
   * @param overtaken called where something was pressed on a page that is old by now, with the
   *     sentence that refuses it: the page that follows may be another
   */
  public BlindReviewModel(
      Sessions sessions,
      Keys keys,
      MasksModel masks,
      Background background,
      Runnable unsealed,
      Consumer<String> overtaken) {
    this.overtaken = overtaken;
    this.sessions = sessions;
    this.keys = keys;
    this.masks = masks;
    this.background = background;
    this.unsealed = unsealed;
  }

  /** What the page shows; empty before a session is shown. */
  public ReadOnlyObjectProperty<Optional<BlindReviewView>> viewProperty() {
    return view.getReadOnlyProperty();
  }

  /** Why the last wish was not granted; empty if it was. */
  public ReadOnlyStringProperty troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  /** Shows a session whose day is closed and whose key is sealed. */
  public void show(SessionState now) {
    if (now.step().ordinal() < Step.DAY_CLOSED.ordinal() || now.unsealed()) {
      throw new IllegalArgumentException("the blind review is for sealed sessions of closed days");
    }
    state = Optional.of(now);
    view.set(Optional.of(BlindReviewView.of(now)));
  }

  /** The events that may make a lap void, in words. */
  public static List<String> events() {
    return java.util.Arrays.stream(blindlap.session.day.VoidEvent.values())
        .map(blindlap.session.day.VoidEvent::text)
        .sorted()
        .toList();
  }

  /** Declares a lap void for an event, in words such as "traffic". */
  public void voidLap(LapId lap, String event) {
    act(latest -> new DayCommands(latest).voidLap(lap, event, ""));
  }

  /** Takes a void back. */
  public void keep(LapId lap, String reason) {
    act(latest -> new DayCommands(latest).withdrawVoid(lap, reason));
  }

  /**
   * Corrects a value.
   *
   * @param lap number over the day, as typed
   * @param measure name of the measure, or of a covariate, whose stint is the lap's
   * @param value as typed: a number, or m:ss.s for times; empty takes the value out
   */
  public void correct(String lap, String measure, String value, String reason) {
    SessionState now = state.orElseThrow();
    if (now.plan().covariate(measure).isPresent()) {
      after(() -> new LapFiles(sessions).correctCovariate(now, lap, measure, value, reason));
      return;
    }
    if (value.isBlank()) {
      takeOut(lap, measure, reason);
      return;
    }
    after(() -> new LapFiles(sessions).correct(now, lap, measure, value, reason));
  }

  private void takeOut(String lap, String measure, String reason) {
    SessionState now = state.orElseThrow();
    int known = TypedNumber.whole(lap).orElse(0);
    Optional<LapState> found =
        now.laps().stream()
            .filter(l -> l.id().ofDay(now.plan().laps().perStint()) == known)
            .findFirst();
    if (found.isEmpty() || reason.isBlank()) {
      trouble.set(
          Problems.sentence(
              Problem.of(
                  found.isEmpty() ? SessionFault.NO_SUCH_LAP : SessionFault.REASON_MISSING,
                  "",
                  found.isEmpty() ? lap : ReasonFor.CORRECTION,
                  now.plan().lapsOfDay())));
      return;
    }
    act(latest -> new DayCommands(latest).takeOut(found.get().id(), measure, reason));
  }

  /**
   * Makes another of two values count, as the one that counts is a typing error.
   *
   * @param words what happened; may be empty
   * @param who who decides
   * @param neither true if that person declares to know neither key nor setups
   */
  public void choose(
      BlindReviewView.Stands of,
      BlindReviewView.Other other,
      String words,
      String who,
      boolean neither) {
    String reason =
        words.isBlank() ? ValueChosen.REASON : ValueChosen.REASON + ": " + words.strip();
    act(
        latest ->
            new TwoValues(latest)
                .choose(
                    of.lap(),
                    of.measure(),
                    other.value(),
                    reason,
                    new TwoValues.Decider(who, neither)));
  }

  /** Closes the review: voids and values are final. */
  public void close() {
    SessionState now = state.orElseThrow();
    after(() -> keys.closeReview(now.id()));
  }

  /** Sectors that are void alone. */
  SectorVoids sectors() {
    return new SectorVoids(session(), this::act);
  }

  /** Those who score something later by code. */
  List<String> assessors() {
    return session().plan().assessors();
  }

  /** The page of one of them. */
  ByCodeModel byCode(String assessor) {
    return new ByCodeModel(sessions, session(), assessor, background, this::show);
  }

  /** What is asked of masked labels. */
  MasksModel masks() {
    return masks;
  }

  /** The session on the page. */
  SessionState session() {
    return state.orElseThrow();
  }

  /** Opens the key with the helper phrase. */
  public void unseal(String phrase) {
    unseal(now -> keys.unseal(now, phrase));
  }

  /** Opens a covered order, which has no phrase. */
  public void uncover() {
    unseal(now -> keys.unsealCovered(now, Optional.empty()));
  }

  private void unseal(Function<SessionState, Sessions.Result> open) {
    SessionState now = state.orElseThrow();
    background.run(
        () ->
            sessions.asShown(now)
                ? open.apply(now)
                : new Sessions.Result.Refused(List.of(Problem.of(SessionFault.SHOWN_IS_OLD, ""))),
        result -> {
          if (result instanceof Sessions.Result.Refused refused) {
            refuse(refused);
          } else {
            trouble.set("");
            unsealed.run();
          }
        },
        this::fail);
  }

  private void act(Function<SessionState, Outcome> decision) {
    SessionState now = state.orElseThrow();
    after(() -> sessions.act(now.id(), decision));
  }

  /** What is pressed on a page that another process has overtaken is refused, in view. */
  private void after(java.util.concurrent.Callable<Sessions.Result> work) {
    SessionState shown = state.orElseThrow();
    background.run(
        () ->
            sessions.asShown(shown)
                ? work.call()
                : new Sessions.Result.Refused(List.of(Problem.of(SessionFault.SHOWN_IS_OLD, ""))),
        result -> {
          if (result instanceof Sessions.Result.Done done) {
            trouble.set("");
            show(done.state());
          } else {
            refuse((Sessions.Result.Refused) result);
          }
        },
        this::fail);
  }

  private void refuse(Sessions.Result.Refused refused) {
    String why = String.join(" ", Problems.sentences(refused.problems()));
    trouble.set(why);
    if (refused.problems().stream().anyMatch(p -> p.fault() == SessionFault.SHOWN_IS_OLD)) {
      overtaken.accept(why);
    }
  }

  private void fail(Exception e) {
    trouble.set(WORDS.say("trouble", Trouble.sentence(e)));
  }
}

package blindlap.screen.review;

import blindlap.desk.Keys;
import blindlap.desk.LapFiles;
import blindlap.desk.Sessions;
import blindlap.fault.Problem;
import blindlap.fault.TypedNumber;
import blindlap.picture.BlindPicture;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plot.Qr;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import blindlap.review.TypingCheck;
import blindlap.screen.part.Background;
import blindlap.session.DayCommands;
import blindlap.session.Fact;
import blindlap.session.Outcome;
import blindlap.session.ReasonFor;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.session.day.Step;
import blindlap.wording.Headline;
import blindlap.wording.LapStarts;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
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
  private final Background background;
  private final Runnable unsealed;
  private final ReadOnlyObjectWrapper<Optional<View>> view =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");

  /**
   * One lap, without anything that depends on the key.
   *
   * @param number number over the day
   * @param start clock time of the start by the watch; empty if no watch was used
   * @param values as they stand on a sheet, in the order of the measures
   * @param asked measures whose value should be checked for a typing error
   * @param voided the event in words; empty if the lap counts
   */
  public record Row(
      LapId id,
      int number,
      int code,
      String start,
      List<String> values,
      Set<String> asked,
      String note,
      String voided) {}

  /**
   * What the page shows.
   *
   * @param answer the largest sentence
   * @param lead what it means
   * @param measures names of the measures
   * @param pictures one picture a measure that has values
   * @param corrections what was corrected
   * @param closed true once the review is closed
   * @param fingerprint of the closed review
   * @param code the fingerprint to scan
   */
  public record View(
      Headline answer,
      String lead,
      List<String> measures,
      List<Drawing> pictures,
      List<Row> rows,
      List<String> corrections,
      boolean closed,
      String fingerprint,
      Optional<Drawing> code) {}

  private Optional<SessionState> state = Optional.empty();

  /** A model that calls {@code unsealed} once the key is open. */
  public BlindReviewModel(Sessions sessions, Keys keys, Background background, Runnable unsealed) {
    this.sessions = sessions;
    this.keys = keys;
    this.background = background;
    this.unsealed = unsealed;
  }

  /** What the page shows; empty before a session is shown. */
  public ReadOnlyObjectProperty<Optional<View>> viewProperty() {
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
    view.set(Optional.of(view(now)));
  }

  private static View view(SessionState state) {
    Plan plan = state.plan();
    List<Row> rows = new ArrayList<>();
    int asked = 0;
    for (LapState lap : state.laps()) {
      Row row = row(state, lap);
      asked += row.asked().isEmpty() ? 0 : 1;
      rows.add(row);
    }
    boolean closed = state.step() == Step.REVIEW_CLOSED;
    long voids = rows.stream().filter(r -> !r.voided().isEmpty()).count();
    Headline answer =
        closed
            ? new Headline(WORDS.say("answer.closed"), "", "")
            : new Headline(
                WORDS.say("answer.before", state.lapsRidden(), voids),
                asked == 0 ? WORDS.say("answer.none") : WORDS.say("answer.ask", asked),
                WORDS.say("answer.after"));
    String print = state.reviewFingerprint().map(f -> f.grouped()).orElse("");
    return new View(
        answer,
        lead(state, closed),
        plan.measures().stream().map(Measure::name).toList(),
        pictures(state),
        rows,
        corrections(state),
        closed,
        print,
        print.isEmpty()
            ? Optional.empty()
            : Optional.of(Qr.of(print, new Spoken(WORDS.say("fingerprint.spoken"), ""))));
  }

  private static String lead(SessionState state, boolean closed) {
    String lead = WORDS.say(closed ? "lead.closed" : "lead.blind");
    return state.plan().blinding().blinded() ? lead : WORDS.say("lead.unblinded", lead);
  }

  private static List<Drawing> pictures(SessionState state) {
    List<Drawing> pictures = new ArrayList<>();
    for (Measure measure : state.plan().measures()) {
      Set<Integer> stints = new TreeSet<>();
      TypingCheck.asked(state, measure).forEach(id -> stints.add(id.stint()));
      BlindPicture.of(state, measure, stints).ifPresent(pictures::add);
    }
    return pictures;
  }

  private static Row row(SessionState state, LapState lap) {
    Plan plan = state.plan();
    List<String> values = new ArrayList<>();
    Set<String> asked = new TreeSet<>();
    for (Measure measure : plan.measures()) {
      BigDecimal value = lap.values().get(measure.name());
      values.add(value == null ? "–" : Figures.value(measure, value.doubleValue()));
      if (TypingCheck.asked(state, measure).contains(lap.id())) {
        asked.add(measure.name());
      }
    }
    return new Row(
        lap.id(),
        lap.id().ofDay(plan.laps().perStint()),
        state.code(lap.id().stint()),
        LapStarts.clock(state, lap),
        values,
        asked,
        lap.note(),
        lap.voided().map(BlindReviewModel::words).orElse(""));
  }

  private static String words(LapState.Voided voided) {
    String event = WORDS.say("void.as", voided.event().text());
    return voided.afterValuesSeen() ? event + ", " + WORDS.say("void.seen") : event;
  }

  private static List<String> corrections(SessionState state) {
    List<String> lines = new ArrayList<>();
    for (Fact.ScoreCorrected c : state.corrections()) {
      lines.add(
          WORDS.say(
              "correction",
              c.lap().ofDay(state.plan().laps().perStint()),
              c.measure(),
              c.value() == null ? "–" : c.value().toPlainString(),
              c.reason()));
    }
    return lines;
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
   * @param measure name of the measure
   * @param value as typed: a number, or m:ss.s for times; empty takes the value out
   */
  public void correct(String lap, String measure, String value, String reason) {
    SessionState now = state.orElseThrow();
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
                  found.isEmpty()
                      ? blindlap.session.SessionFault.NO_SUCH_LAP
                      : blindlap.session.SessionFault.REASON_MISSING,
                  "",
                  found.isEmpty() ? lap : ReasonFor.CORRECTION,
                  now.plan().lapsOfDay())));
      return;
    }
    act(
        latest ->
            Outcome.accepted(new Fact.ScoreCorrected(found.get().id(), measure, null, reason)));
  }

  /** Closes the review: voids and values are final. */
  public void close() {
    SessionState now = state.orElseThrow();
    after(() -> keys.closeReview(now.id()));
  }

  /** Opens the key with the helper phrase. */
  public void unseal(String phrase) {
    SessionState now = state.orElseThrow();
    background.run(
        () -> keys.unseal(now, phrase),
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

  private void after(java.util.concurrent.Callable<Sessions.Result> work) {
    background.run(
        work,
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
    trouble.set(String.join(" ", Problems.sentences(refused.problems())));
  }

  private void fail(Exception e) {
    trouble.set(WORDS.say("trouble", Trouble.sentence(e)));
  }
}

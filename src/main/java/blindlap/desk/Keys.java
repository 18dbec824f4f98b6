package blindlap.desk;

import blindlap.exchange.DayRemarks;
import blindlap.exchange.HelperFits;
import blindlap.fault.Fault;
import blindlap.fault.Problem;
import blindlap.review.DayRecord;
import blindlap.review.RecordedFinding;
import blindlap.seal.HelperLock;
import blindlap.seal.HelperSchedule;
import blindlap.seal.KeySheet;
import blindlap.seal.OpenKey;
import blindlap.seal.Opening;
import blindlap.seal.PhraseReading;
import blindlap.seal.Sealing;
import blindlap.seal.SheetReading;
import blindlap.session.Fact;
import blindlap.session.LifeCommands;
import blindlap.session.LookTaken;
import blindlap.session.Notebook;
import blindlap.session.OpenedWith;
import blindlap.session.Outcome;
import blindlap.session.SeriesEnded;
import blindlap.session.SessionFault;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.wording.AmendmentWords;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Opens keys: for the helper during the day, for everyone once the review is closed. */
public final class Keys {
  private final Sessions sessions;
  private final Sealing sealing;
  private final SeriesBook series;
  private final Notebook notebook;

  Keys(Sessions sessions, Sealing sealing, SeriesBook series, Notebook notebook) {
    this.sessions = sessions;
    this.sealing = sealing;
    this.series = series;
    this.notebook = notebook;
  }

  /** What a phrase gave. */
  public sealed interface Result {
    /**
     * The helper's view of the day.
     *
     * @param schedule what to fit
     * @param sheet the key sheet for the helper's paper
     * @param lock for the helper's records
     */
    record Open(HelperSchedule schedule, KeySheet sheet, HelperLock lock) implements Result {
      @Override
      public String toString() {
        return "Open[]";
      }
    }

    /** The phrase did not open the key. */
    record Refused(List<Problem> problems) implements Result {}
  }

  private record Opened(OpenKey key, HelperLock lock) {}

  private sealed interface Attempt {
    record Good(Opened opened) implements Attempt {}

    record Bad(Problem problem) implements Attempt {}
  }

  /** Opens the helper's view with the phrase as typed. */
  public Result helper(SessionState state, String typed) {
    if (!state.hasKey()) {
      return new Result.Refused(List.of(Problem.of(SessionFault.OPEN_NOISE_RUN, "")));
    }
    Attempt attempt = open(state, typed);
    if (attempt instanceof Attempt.Bad bad) {
      return new Result.Refused(List.of(bad.problem()));
    }
    Opened opened = ((Attempt.Good) attempt).opened();
    return new Result.Open(
        sealing.schedule(opened.key()), sealing.sheet(opened.key()), opened.lock());
  }

  private Attempt open(SessionState state, String typed) {
    if (state.covered()) {
      return bad(DeskFault.NO_PHRASE);
    }
    PhraseReading reading = PhraseReading.of(typed);
    if (!(reading instanceof PhraseReading.Read read)) {
      return new Attempt.Bad(unread(reading));
    }
    Opening opening = sealing.open(state.sealedKey(), read.phrase());
    if (opening instanceof Opening.Opened opened) {
      return new Attempt.Good(new Opened(opened.key(), opened.lock()));
    }
    return bad(
        opening instanceof Opening.WrongPhrase ? DeskFault.WRONG_PHRASE : DeskFault.KEY_DAMAGED);
  }

  /** Why typed words are no phrase. */
  static Problem unread(PhraseReading reading) {
    if (reading instanceof PhraseReading.UnknownWord word) {
      return Problem.of(DeskFault.PHRASE_WORD, "", word.position(), String.join(", ", word.near()));
    }
    return Problem.of(DeskFault.PHRASE_COUNT, "", ((PhraseReading.WrongCount) reading).words());
  }

  private static Attempt bad(DeskFault fault, Object... details) {
    return new Attempt.Bad(Problem.of(fault, "", details));
  }

  /**
   * Closes the review: voids and values are final, and the seal may be opened. In a series the
   * writing says where its other sessions stand.
   */
  public Sessions.Result closeReview(SessionId id) {
    return sessions.act(
        id,
        latest -> {
          Outcome outcome = new LifeCommands(latest).closeReview();
          if (!(outcome instanceof Outcome.Accepted accepted)) {
            return outcome;
          }
          List<Fact> facts = new ArrayList<>(accepted.facts());
          facts.addAll(series.standing(latest));
          return new Outcome.Accepted(facts);
        });
  }

  /** Why the seal may not be opened yet, if so; asked before anyone types a phrase. */
  public Optional<List<Problem>> refuseEarly(SessionState state) {
    return refuseEarly(state, Optional.empty());
  }

  /**
   * The same where the session's declared series is ended early with it.
   *
   * @param ending why and by whom the series is ended early; empty if it is not
   */
  public Optional<List<Problem>> refuseEarly(SessionState state, Optional<SeriesEnded> ending) {
    if (new LifeCommands(state).mayUnseal() instanceof Outcome.Refused refused) {
      return Optional.of(refused.problems());
    }
    return series.refuseUnseal(state, ending);
  }

  /** Unseals a session with the helper's phrase. */
  public Sessions.Result unseal(SessionState state, String typed) {
    return unseal(state, typed, Optional.empty());
  }

  /**
   * Unseals a session with the helper's phrase and, in the same writing, ends its series early.
   *
   * @param ending why and by whom the series is ended early; empty if it is not
   */
  public Sessions.Result unseal(SessionState state, String typed, Optional<SeriesEnded> ending) {
    Optional<List<Problem>> refusal = refuseEarly(state, ending);
    if (refusal.isPresent()) {
      return new Sessions.Result.Refused(refusal.get());
    }
    Attempt attempt = open(state, typed);
    if (attempt instanceof Attempt.Bad bad) {
      return new Sessions.Result.Refused(List.of(bad.problem()));
    }
    Opened opened = ((Attempt.Good) attempt).opened();
    Map<Integer, String> records = new TreeMap<>();
    Stream.concat(
            state.helperRecords().values().stream(),
            state.looks().values().stream().map(LookTaken::record))
        .forEach(
            record ->
                opened
                    .lock()
                    .decrypt(state.id().text(), record)
                    .ifPresent(text -> records.put(record.stint(), text)));
    MountedUnits.swapped(state, records);
    HelperRecords helper = new HelperRecords(state, opened.lock(), sealing, notebook);
    List<Fact> unsealed = unsealed(state, helper);
    Sessions.Result result =
        unseal(state, opened.key(), OpenedWith.PHRASE, records, ending, unsealed);
    if (result instanceof Sessions.Result.Done && !unsealed.isEmpty()) {
      helper.forget();
    }
    return result;
  }

  /**
   * Corrections that the helper said too late for any record: the day was closed while they stood
   * in the draft. They become amendments, which change no number.
   */
  private static List<Fact> unsealed(SessionState state, HelperRecords helper) {
    return helper.pending(state).stream()
        .map(each -> (Fact) AmendmentWords.leftInDraft(state, each))
        .toList();
  }

  /** Unseals a session with the text of the key sheet, where the phrase is lost. */
  public Sessions.Result unsealFromSheet(SessionState state, String sheet) {
    return unsealFromSheet(state, sheet, Optional.empty());
  }

  /**
   * The same and, in the same writing, ends its series early.
   *
   * @param ending why and by whom the series is ended early; empty if it is not
   */
  public Sessions.Result unsealFromSheet(
      SessionState state, String sheet, Optional<SeriesEnded> ending) {
    Optional<List<Problem>> refusal = refuseEarly(state, ending);
    if (refusal.isPresent()) {
      return new Sessions.Result.Refused(refusal.get());
    }
    SheetReading reading =
        sealing.openFromSheet(
            sheet, state.planText().getBytes(StandardCharsets.UTF_8), state.planFingerprint());
    if (reading instanceof SheetReading.Mistyped mistyped) {
      return refused(mistyped.slip(), mistyped.row(), mistyped.detail());
    }
    if (reading instanceof SheetReading.Opened opened) {
      return unseal(state, opened.key(), OpenedWith.SHEET, Map.of(), ending, List.of());
    }
    return refused(DeskFault.SHEET_OF_ANOTHER);
  }

  /**
   * Opens a covered order, without a phrase: the whole key, verified against the fingerprint and
   * against everything that was shown.
   *
   * @param ending why and by whom the series is ended early; empty if it is not
   */
  public Sessions.Result unsealCovered(SessionState state, Optional<SeriesEnded> ending) {
    Optional<List<Problem>> refusal = refuseEarly(state, ending);
    if (refusal.isPresent()) {
      return new Sessions.Result.Refused(refusal.get());
    }
    if (!state.covered()) {
      return refused(DeskFault.NOT_COVERED);
    }
    Covers.Opened<OpenKey> opened = new Covers(notebook).key(state);
    if (!opened.problems().isEmpty()) {
      return new Sessions.Result.Refused(opened.problems());
    }
    OpenKey key = opened.orElseThrow();
    boolean asShown =
        state.shown().entrySet().stream()
            .allMatch(
                shown ->
                    shown.getValue()
                        == (shown.getKey() == 0 ? key.warmUp() : key.setup(shown.getKey())));
    return asShown
        ? unseal(state, key, OpenedWith.COVER, state.mounted(), ending, List.of())
        : refused(DeskFault.COVER_CHANGED);
  }

  private static Sessions.Result refused(Fault fault, Object... details) {
    return new Sessions.Result.Refused(List.of(Problem.of(fault, "", details)));
  }

  private Sessions.Result unseal(
      SessionState state,
      OpenKey key,
      OpenedWith with,
      Map<Integer, String> records,
      Optional<SeriesEnded> ending,
      List<Fact> after) {
    byte[] plan = state.planText().getBytes(StandardCharsets.UTF_8);
    boolean matches =
        sealing.verify(plan, state.plan().rule(), key, state.planFingerprint())
            == blindlap.seal.Verification.MATCHES;
    return sessions.act(
        state.id(),
        latest ->
            matches
                ? recorded(
                    latest,
                    series.ending(latest, ending),
                    series.standing(latest),
                    new LifeCommands(latest).unsealed(key, with, records),
                    after)
                : Outcome.refused(SessionFault.FINGERPRINT_DIFFERS, ""));
  }

  /** With the opening goes what this edition of the method finds, in the same writing. */
  private static Outcome recorded(
      SessionState state,
      List<Fact> before,
      List<Fact> standing,
      Outcome outcome,
      List<Fact> after) {
    if (outcome instanceof Outcome.Accepted accepted
        && accepted.facts().get(0) instanceof Fact.SealOpened opened) {
      DayRecord day =
          DayRecord.of(
              state,
              opened.key(),
              HelperFits.read(opened.helperRecords(), state.plan()),
              // Why a day ended early decides whether there is a verdict.
              DayRemarks.of(state));
      List<Fact> facts = new ArrayList<>(before);
      facts.add(opened);
      facts.addAll(standing);
      facts.add(RecordedFinding.today(day).fact());
      facts.addAll(after);
      return new Outcome.Accepted(facts);
    }
    return outcome;
  }
}

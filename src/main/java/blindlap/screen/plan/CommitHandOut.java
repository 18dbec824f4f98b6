package blindlap.screen.plan;

import blindlap.desk.HelperSheets;
import blindlap.desk.Planning;
import blindlap.desk.Sessions;
import blindlap.desk.Sheets;
import blindlap.plan.BlindLevel;
import blindlap.plot.Qr;
import blindlap.plot.surface.Spoken;
import blindlap.screen.part.Background;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.wording.PlanWords;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.UnaryOperator;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import org.jspecify.annotations.Nullable;

/**
 * What is given out once a session is sealed: the fingerprint to someone else, the sheet to the
 * helper. Neither can undo the session.
 */
public final class CommitHandOut {
  /**
   * What was sealed, for everyone.
   *
   * @param fingerprint in groups, to read aloud or copy
   * @param code the same as a QR code
   * @param codes codes of the stints, for the rider's card
   */
  public record Sealing(String fingerprint, Qr code, List<Integer> codes) {}

  private final Planning planning;
  private final HelperSheets sheets;
  private final Background background;
  private final ReadOnlyStringWrapper message;
  private final ReadOnlyBooleanWrapper busy;
  private final ReadOnlyObjectWrapper<Optional<Sealing>> sealing =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final StringProperty givenTo = new SimpleStringProperty("");
  private @Nullable SessionState state;
  private boolean sheetWritten;

  /**
   * @param message of the commit, which is told what became of it
   * @param busy of the commit, true while a sheet is written
   */
  CommitHandOut(
      Planning planning,
      HelperSheets sheets,
      Background background,
      ReadOnlyStringWrapper message,
      ReadOnlyBooleanWrapper busy) {
    this.planning = planning;
    this.sheets = sheets;
    this.background = background;
    this.message = message;
    this.busy = busy;
  }

  /** The session is on disk, its order sealed or covered. */
  void begin(SessionState committed) {
    state = committed;
    String fingerprint = committed.planFingerprint().grouped();
    sealing.set(
        Optional.of(
            new Sealing(
                fingerprint,
                Qr.of(fingerprint, new Spoken(PlanWords.say("commit.qr"), fingerprint)),
                committed.day().codes())));
  }

  /** The sealed session; empty before. */
  Optional<SessionId> session() {
    return Optional.ofNullable(state).map(SessionState::id);
  }

  /** True if somebody swaps all day, who may never have seen the program. */
  boolean toHelper() {
    SessionState session = state;
    return session != null && session.plan().blinding().level() == BlindLevel.HELPER;
  }

  /** True once the helper's sheet is on disk. */
  boolean sheetWritten() {
    return sheetWritten;
  }

  void clear() {
    state = null;
    sheetWritten = false;
    givenTo.set("");
    sealing.set(Optional.empty());
  }

  /** What was sealed; empty before. */
  public ReadOnlyObjectProperty<Optional<Sealing>> sealingProperty() {
    return sealing.getReadOnlyProperty();
  }

  /** Whom the fingerprint is given to. */
  public StringProperty givenToProperty() {
    return givenTo;
  }

  /** Notes whom the fingerprint was given to. */
  public void fingerprintGiven() {
    String to = givenTo.get().strip();
    SessionState session = state;
    if (session == null || to.isEmpty()) {
      message.set(PlanWords.say("commit.given.whom"));
      return;
    }
    background.run(
        () -> planning.fingerprintGiven(session.id(), to),
        result ->
            message.set(
                result instanceof Sessions.Result.Refused refused
                    ? String.join(" ", Problems.sentences(refused.problems()))
                    : PlanWords.say("commit.given", to)),
        problem -> message.set(Trouble.sentence(problem)));
  }

  /**
   * Writes the helper's sheet into a folder, straight from memory. The session stands whatever
   * becomes of it.
   *
   * @param phrase that the session is sealed with
   * @param paper A4 or LETTER
   */
  void writeSheet(String phrase, Path folder, String paper) {
    SessionState session = state;
    if (session == null) {
      return;
    }
    boolean again = sheetWritten;
    Sheets.Paper format = Sheets.Paper.valueOf(paper);
    write(
        () -> sheets.write(session, phrase, folder, format, again),
        () -> sheetWritten = true,
        why -> PlanWords.say("commit.sheet.failed", why));
  }

  /**
   * Writes the page for a helper who has never seen the program into a folder.
   *
   * @param paper A4 or LETTER
   */
  void writeQuickStart(Path folder, String paper) {
    Sheets.Paper format = Sheets.Paper.valueOf(paper);
    write(() -> sheets.quickStart(folder, format), () -> {}, why -> why);
  }

  private void write(
      Callable<HelperSheets.Result> work, Runnable written, UnaryOperator<String> failed) {
    busy.set(true);
    background.run(
        work,
        result -> {
          busy.set(false);
          if (result instanceof HelperSheets.Result.Written done) {
            written.run();
            message.set(PlanWords.say("commit.sheet", done.file()));
          } else if (result instanceof HelperSheets.Result.Refused refused) {
            message.set(failed.apply(String.join(" ", Problems.sentences(refused.problems()))));
          }
        },
        problem -> {
          busy.set(false);
          message.set(failed.apply(Trouble.sentence(problem)));
        });
  }
}

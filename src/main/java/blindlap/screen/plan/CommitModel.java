package blindlap.screen.plan;

import blindlap.desk.Committing;
import blindlap.desk.HelperDays;
import blindlap.desk.HelperSheets;
import blindlap.desk.Planning;
import blindlap.desk.Sessions;
import blindlap.desk.Sheets;
import blindlap.plan.Plan;
import blindlap.plan.Setup;
import blindlap.plot.Qr;
import blindlap.plot.surface.Spoken;
import blindlap.screen.cover.HelperCover;
import blindlap.screen.part.Background;
import blindlap.screen.part.Shell;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.wording.PlanSummary;
import blindlap.wording.PlanWords;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import org.jspecify.annotations.Nullable;

/**
 * From a draft to a sealed session: hand the machine over, read and sign, seal, give the
 * fingerprint away, note the phrase, take the sheet. Holds nothing of the order at any time; the
 * phrase only until the helper has noted it.
 */
public final class CommitModel {
  /** Where the commit stands. */
  public enum Step {
    EDITING,
    HAND_OVER,
    SIGNING,
    SEALED,
    NOTED
  }

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
  private final Shell shell;
  private final Background background;
  private final PlanInHand page;
  private final ReadOnlyObjectWrapper<Step> step = new ReadOnlyObjectWrapper<>(Step.EDITING);
  private final ReadOnlyObjectWrapper<Optional<Sealing>> sealing =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyStringWrapper phrase = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper message = new ReadOnlyStringWrapper("");
  private final ReadOnlyBooleanWrapper busy = new ReadOnlyBooleanWrapper();
  private final StringProperty signed = new SimpleStringProperty("");
  private final StringProperty givenTo = new SimpleStringProperty("");
  private final StringProperty typedPhrase = new SimpleStringProperty("");
  private @Nullable SessionState state;
  private Map<String, Object> fields = Map.of();
  private List<String> history = List.of();
  private Optional<Integer> nullRun = Optional.empty();
  private final HelperCover cover;
  private boolean sheetWritten;
  private boolean secret;
  private boolean unblinded;

  CommitModel(
      Planning planning,
      HelperSheets sheets,
      HelperDays days,
      Clock clock,
      Shell shell,
      Background background,
      PlanInHand page) {
    this.planning = planning;
    this.sheets = sheets;
    this.shell = shell;
    this.background = background;
    this.page = page;
    this.cover = new HelperCover(clock, days::pin, this::lost);
    step.addListener((o, before, now) -> shell.lend(Shell.Page.PLAN, covered(now)));
  }

  private boolean covered(Step at) {
    return secret && at != Step.EDITING;
  }

  /** Where the commit stands. */
  public ReadOnlyObjectProperty<Step> stepProperty() {
    return step.getReadOnlyProperty();
  }

  /** What was sealed; empty before. */
  public ReadOnlyObjectProperty<Optional<Sealing>> sealingProperty() {
    return sealing.getReadOnlyProperty();
  }

  /** The helper phrase, for the helper alone; empty before sealing and once it is noted. */
  public ReadOnlyStringProperty phraseProperty() {
    return phrase.getReadOnlyProperty();
  }

  /** What happened or went wrong, a sentence; may be empty. */
  public ReadOnlyStringProperty messageProperty() {
    return message.getReadOnlyProperty();
  }

  /** True while sealing or opening. */
  public ReadOnlyBooleanProperty busyProperty() {
    return busy.getReadOnlyProperty();
  }

  /** What keeps the helper's pages from a passing rider. */
  public HelperCover cover() {
    return cover;
  }

  /**
   * True for a blind session: its pages are the helper's. Of an unblinded session and of an open
   * noise run anyone may see everything.
   */
  public boolean secret() {
    return secret;
  }

  /** True for a comparison whose rider knows what is fitted. */
  public boolean unblinded() {
    return unblinded;
  }

  /** True for an open noise run: nothing is drawn and nothing sealed. */
  public boolean open() {
    return !secret && !unblinded;
  }

  /** Names of those who read the plan, one a line. */
  public StringProperty signedProperty() {
    return signed;
  }

  /** Whom the fingerprint is given to. */
  public StringProperty givenToProperty() {
    return givenTo;
  }

  /** The phrase as the helper types it back. */
  public StringProperty typedPhraseProperty() {
    return typedPhrase;
  }

  /** Names of the setups, for the helper's choice of a concealed null run. */
  public List<String> setups() {
    return page.planProperty().get().map(Plan::setups).orElse(List.of()).stream()
        .map(Setup::name)
        .toList();
  }

  /** The plan to read before signing, a heading and a text each. */
  public List<PlanSummary.Part> summary() {
    List<PlanSummary.Part> parts = new ArrayList<>();
    page.planProperty()
        .get()
        .ifPresent(plan -> parts.addAll(PlanSummary.parts(plan, page.answered(), page.earlier())));
    if (!history.isEmpty()) {
      parts.add(new PlanSummary.Part(PlanWords.say("sum.history"), history));
    }
    return parts;
  }

  /** Starts the commit of a plan that holds. */
  public void begin() {
    if (!page.completeProperty().get()) {
      message.set(PlanWords.say("commit.not.yet"));
      return;
    }
    page.keep();
    fields = page.fields();
    message.set("");
    Plan plan = page.planProperty().get().orElseThrow();
    unblinded = plan.unblinded();
    secret = plan.kind() == Plan.Kind.COMPARISON && !unblinded;
    background.run(() -> history(plan), this::asked, this::failed);
  }

  /** What was asked before, read before anything is drawn; a noise run asks nothing. */
  private List<String> history(Plan plan) {
    return plan.kind() == Plan.Kind.COMPARISON ? planning.askedBefore(plan) : List.of();
  }

  private void asked(List<String> lines) {
    history = lines;
    step.set(secret ? Step.HAND_OVER : Step.SIGNING);
  }

  /** Back to the draft; nothing was sealed. */
  public void back() {
    nullRun = Optional.empty();
    message.set("");
    cover.end();
    step.set(Step.EDITING);
  }

  /**
   * The machine is with the helper.
   *
   * @param digits the PIN that the helper chose for these pages
   */
  public void handedOver(String digits) {
    if (step.get() == Step.HAND_OVER && cover.begin(digits)) {
      step.set(Step.SIGNING);
    }
  }

  /** Too many wrong PINs: nobody sees these pages again. */
  private void lost() {
    boolean sealed = state != null;
    if (sealed) {
      clear();
    } else {
      back();
    }
    page.say(PlanWords.say(sealed ? "commit.lost.sealed" : "commit.lost"));
  }

  /**
   * The helper's choice.
   *
   * @param setup ridden secretly under every name, 0 = A; null for an ordinary comparison
   */
  public void concealNullRun(@Nullable Integer setup) {
    nullRun = Optional.ofNullable(setup);
  }

  /** Fixes the plan, draws the order, seals the key. */
  public void seal() {
    List<String> names = signed.get().lines().map(String::strip).filter(n -> !n.isEmpty()).toList();
    if (names.isEmpty()) {
      message.set(PlanWords.say("commit.unsigned"));
      return;
    }
    busy.set(true);
    message.set(PlanWords.say(open() ? "commit.fixing" : "commit.sealing"));
    Optional<Integer> kind = nullRun;
    background.run(() -> planning.commit(fields, kind, names), this::sealed, this::failed);
  }

  private void sealed(Committing.Result result) {
    busy.set(false);
    if (result instanceof Committing.Result.Refused refused) {
      message.set(String.join(" ", Problems.sentences(refused.problems())));
      return;
    }
    if (result instanceof Committing.Result.Open open) {
      // An open noise run has no key: there is nothing to note, and everyone may look.
      state = open.state();
      page.forget();
      finish();
      return;
    }
    Committing.Result.Committed committed = (Committing.Result.Committed) result;
    state = committed.state();
    nullRun = Optional.empty();
    String fingerprint = committed.sealed().fingerprint().grouped();
    sealing.set(
        Optional.of(
            new Sealing(
                fingerprint,
                Qr.of(fingerprint, new Spoken(PlanWords.say("commit.qr"), fingerprint)),
                committed.sealed().codes())));
    phrase.set(committed.sealed().phrase().text());
    message.set("");
    page.forget();
    step.set(Step.SEALED);
  }

  private void failed(Exception problem) {
    busy.set(false);
    message.set(PlanWords.say("commit.failed", Trouble.sentence(problem)));
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
        this::failed);
  }

  /** The helper has written the phrase down and typed it back: it is shown no more. */
  public void phraseNoted() {
    if (!same(typedPhrase.get(), phrase.get())) {
      message.set(PlanWords.say("commit.phrase.differs"));
      return;
    }
    phrase.set("");
    message.set("");
    step.set(Step.NOTED);
  }

  private static boolean same(String typed, String shown) {
    return words(typed).equals(words(shown));
  }

  private static List<String> words(String phrase) {
    return List.of(phrase.strip().toLowerCase(Locale.ROOT).split("[\\s,-]+"));
  }

  /**
   * Writes the helper's sheet into a folder, straight from memory.
   *
   * @param paper A4 or LETTER
   */
  public void writeSheet(Path folder, String paper) {
    SessionState session = state;
    if (session == null) {
      return;
    }
    busy.set(true);
    String typed = typedPhrase.get();
    boolean again = sheetWritten;
    Sheets.Paper format = Sheets.Paper.valueOf(paper);
    background.run(
        () -> sheets.write(session, typed, folder, format, again),
        result -> {
          busy.set(false);
          if (result instanceof HelperSheets.Result.Written written) {
            sheetWritten = true;
            message.set(PlanWords.say("commit.sheet", written.file()));
          } else if (result instanceof HelperSheets.Result.Refused refused) {
            message.set(String.join(" ", Problems.sentences(refused.problems())));
          }
        },
        this::failed);
  }

  /** The machine goes back: everything of the commit is cleared away. */
  public void finish() {
    Optional<SessionId> session = Optional.ofNullable(state).map(SessionState::id);
    clear();
    session.ifPresent(id -> shell.open(Shell.Page.NOTEBOOK, id));
  }

  private void clear() {
    cover.end();
    state = null;
    sheetWritten = false;
    fields = Map.of();
    history = List.of();
    signed.set("");
    givenTo.set("");
    typedPhrase.set("");
    phrase.set("");
    message.set("");
    sealing.set(Optional.empty());
    step.set(Step.EDITING);
  }
}

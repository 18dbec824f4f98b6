package blindlap.screen.plan;

import blindlap.desk.Committing;
import blindlap.desk.HelperDays;
import blindlap.desk.HelperSheets;
import blindlap.desk.Planning;
import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.plan.Setup;
import blindlap.screen.cover.HelperCover;
import blindlap.screen.part.Background;
import blindlap.screen.part.Shell;
import blindlap.seal.PhraseAsked;
import blindlap.session.day.SessionId;
import blindlap.wording.PlanSummary;
import blindlap.wording.PlanWords;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
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
 * From a draft to a sealed session: hand the machine over, read and sign, note the phrase, type two
 * of its words back, seal, give the fingerprint away, take the sheet. Nothing is drawn but the
 * phrase before its words came back. Holds nothing of the order at any time; the phrase only until
 * the machine goes back.
 */
public final class CommitModel {
  /** Where the commit stands. */
  public enum Step {
    EDITING,
    HAND_OVER,
    SIGNING,
    PHRASE,
    WORDS,
    SEALED,
    SHEET
  }

  private final Planning planning;
  private final Shell shell;
  private final Background background;
  private final PlanInHand page;
  private final ReadOnlyObjectWrapper<Step> step = new ReadOnlyObjectWrapper<>(Step.EDITING);
  private final CommitPhrase phrase = new CommitPhrase();
  private final ReadOnlyStringWrapper message = new ReadOnlyStringWrapper("");
  private final ReadOnlyBooleanWrapper busy = new ReadOnlyBooleanWrapper();
  private final StringProperty signed = new SimpleStringProperty("");
  private Map<String, Object> fields = Map.of();
  private List<String> history = List.of();
  private Optional<Integer> nullRun = Optional.empty();
  private final HelperCover cover;
  private final CommitHandOut handOut;
  private boolean secret;
  private Optional<BlindLevel> alone = Optional.empty();

  CommitModel(
      Planning planning,
      HelperSheets sheets,
      HelperDays days,
      Clock clock,
      Shell shell,
      Background background,
      PlanInHand page) {
    this.planning = planning;
    this.shell = shell;
    this.background = background;
    this.page = page;
    this.handOut = new CommitHandOut(planning, sheets, background, message, busy);
    this.cover = new HelperCover(clock, days::pin, this::lost);
    step.addListener((o, before, now) -> shell.lend(Shell.Page.PLAN, covered(now)));
    shell.guard(Shell.Page.PLAN, this::lostByLeaving, this::leave);
  }

  private boolean covered(Step at) {
    return secret && at != Step.EDITING;
  }

  /** Where the commit stands. */
  public ReadOnlyObjectProperty<Step> stepProperty() {
    return step.getReadOnlyProperty();
  }

  /** The helper phrase, and what is asked of it. */
  public CommitPhrase phrase() {
    return phrase;
  }

  /** What goes to whom once it is sealed: fingerprint and sheet. */
  public CommitHandOut handOut() {
    return handOut;
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
   * True for a blind session: its pages are the helper's, or the friend's who prepares it. Where
   * the rider swaps alone, and of an open noise run, anyone may see everything.
   */
  public boolean secret() {
    return secret;
  }

  /**
   * How blind a comparison is whose order is covered, since its rider is shown what to mount; empty
   * for others.
   */
  public Optional<BlindLevel> alone() {
    return alone;
  }

  /** True for an open noise run: nothing is drawn and nothing sealed. */
  public boolean open() {
    return !secret && alone.isEmpty();
  }

  /** Names of those who read the plan, one a line. */
  public StringProperty signedProperty() {
    return signed;
  }

  /** Names of the setups, for the helper's choice of a concealed null run. */
  public List<String> setups() {
    List<Setup> all = page.planProperty().get().map(Plan::setups).orElse(List.of());
    return all.stream().map(Setup::name).toList();
  }

  /** Why no null run can be concealed in this plan, in a sentence; empty if one can. */
  Optional<String> nullRunRefused() {
    return page.planProperty().get().flatMap(planning::refuseNullRun).map(Problems::sentence);
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
    BlindLevel level = plan.blinding().level();
    phrase.heldAt(level);
    boolean compares = plan.kind().drawn();
    alone = compares && level.shown() ? Optional.of(level) : Optional.empty();
    secret = compares && alone.isEmpty();
    background.run(() -> history(plan), this::asked, this::failed);
  }

  /** What was asked before, read before anything is drawn; a noise run asks nothing. */
  private List<String> history(Plan plan) {
    return plan.kind().drawn() ? planning.askedBefore(plan) : List.of();
  }

  private void asked(List<String> lines) {
    history = lines;
    step.set(secret ? Step.HAND_OVER : Step.SIGNING);
  }

  /** Back to the draft; nothing was sealed, and a phrase that was shown is dropped. */
  public void back() {
    nullRun = Optional.empty();
    phrase.drop();
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
    boolean sealed = handOut.session().isPresent();
    if (sealed) {
      clear();
    } else {
      back();
    }
    page.say(phrase.words().say(sealed ? "commit.lost.sealed" : "commit.lost"));
  }

  /** The setup that is ridden under every name, 0 = A; null for an ordinary comparison. */
  public void concealNullRun(@Nullable Integer setup) {
    nullRun = Optional.ofNullable(setup);
  }

  /**
   * The plan is signed: an open noise run is fixed, the order of a rider who swaps alone is drawn
   * and covered, and of all others the phrase is drawn and shown.
   */
  public void sign() {
    List<String> names = names();
    if (names.isEmpty()) {
      message.set(PlanWords.say("commit.unsigned"));
      return;
    }
    busy.set(true);
    message.set(secret ? "" : PlanWords.say("commit.fixing"));
    if (alone.isPresent()) {
      background.run(() -> planning.cover(fields, names), this::sealed, this::failed);
    } else if (open()) {
      background.run(() -> planning.fix(fields, names), this::sealed, this::failed);
    } else {
      background.run(() -> planning.begin(fields), this::begun, this::failed);
    }
  }

  private List<String> names() {
    return signed.get().lines().map(String::strip).filter(n -> !n.isEmpty()).toList();
  }

  private void begun(Committing.Begun begun) {
    busy.set(false);
    if (begun instanceof Committing.Begun.Refused refused) {
      message.set(String.join(" ", Problems.sentences(refused.problems())));
    } else if (begun instanceof Committing.Begun.Phrase drawn) {
      phrase.show(drawn.asked());
      step.set(Step.PHRASE);
    } else if (begun instanceof Committing.Begun.Alone) {
      busy.set(true);
      List<String> names = names();
      background.run(() -> planning.cover(fields, names), this::sealed, this::failed);
    }
  }

  /** The helper has written the phrase down: it is hidden, and two of its words are asked. */
  public void phraseNoted() {
    phrase.hide();
    message.set("");
    step.set(Step.WORDS);
  }

  /** The helper wants to see the phrase again. */
  public void phraseAgain() {
    phrase.again();
    message.set("");
    step.set(Step.PHRASE);
  }

  /** Draws the order and seals it, if the two words are those of the phrase. */
  public void seal() {
    PhraseAsked.Back back = phrase.back().orElse(null);
    if (back instanceof PhraseAsked.Back.Wrong wrong) {
      phraseAgain();
      message.set(PlanWords.wrongWords(wrong.places()));
    } else if (back instanceof PhraseAsked.Back.Right right) {
      busy.set(true);
      message.set(PlanWords.say("commit.sealing"));
      Optional<Integer> kind = nullRun;
      List<String> names = names();
      background.run(
          () -> planning.seal(fields, kind, names, right.phrase()), this::sealed, this::failed);
    }
  }

  private void sealed(Committing.Result result) {
    busy.set(false);
    if (result instanceof Committing.Result.Refused refused) {
      message.set(String.join(" ", Problems.sentences(refused.problems())));
      return;
    }
    if (result instanceof Committing.Result.Open open) {
      // An open noise run has no key: there is nothing to note, and everyone may look.
      page.forget();
      finish(Optional.of(open.state().id()));
      return;
    }
    if (result instanceof Committing.Result.Covered covered) {
      handOut.begin(covered.state());
    } else if (result instanceof Committing.Result.Committed committed) {
      nullRun = Optional.empty();
      handOut.begin(committed.state());
      phrase.sealedWith(committed.sealed().phrase());
    }
    message.set("");
    page.forget();
    step.set(Step.SEALED);
  }

  private void failed(Exception problem) {
    busy.set(false);
    message.set(PlanWords.say("commit.failed", Trouble.sentence(problem)));
  }

  /** On to the sheet. */
  public void goOn() {
    message.set("");
    step.set(Step.SHEET);
  }

  /** Writes the helper's sheet into a folder; see {@link CommitHandOut}. */
  public void writeSheet(Path folder, String paper) {
    handOut.writeSheet(phrase.noted(), folder, paper);
  }

  /** The machine goes back: everything of the commit is cleared away. */
  public void finish() {
    finish(handOut.session());
  }

  /** The machine goes back, with the plan open to be read: everyone may. */
  public void finishAndRead() {
    Optional<SessionId> session = handOut.session();
    clear();
    session.ifPresent(shell::readPlan);
  }

  private void finish(Optional<SessionId> session) {
    clear();
    session.ifPresent(id -> shell.open(Shell.Page.NOTEBOOK, id));
  }

  private Optional<Shell.Question> lostByLeaving() {
    boolean asked = step.get() == Step.PHRASE || step.get() == Step.WORDS;
    boolean sealed = step.get() == Step.SEALED || step.get() == Step.SHEET;
    if (!asked && (!sealed || alone.isPresent() || handOut.sheetWritten())) {
      return Optional.empty();
    }
    if (cover.stateProperty().get() == HelperCover.State.BLANK) {
      return Shell.Question.of(
          phrase.words().say("commit.leave.blank"), PlanWords.say("commit.leave"));
    }
    if (busy.get()) {
      return Shell.Question.of(PlanWords.say("commit.leave.busy"), "");
    }
    return asked
        ? Shell.Question.of(PlanWords.say("commit.leave.asked"), PlanWords.say("commit.leave.drop"))
        : Shell.Question.of(
            phrase.words().say("commit.leave.sealed"), PlanWords.say("commit.leave"));
  }

  private void leave() {
    if (handOut.session().isEmpty()) {
      back();
    } else {
      clear();
    }
  }

  private void clear() {
    cover.end();
    handOut.clear();
    fields = Map.of();
    history = List.of();
    signed.set("");
    phrase.drop();
    message.set("");
    step.set(Step.EDITING);
  }
}

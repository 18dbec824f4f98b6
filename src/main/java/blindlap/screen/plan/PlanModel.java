package blindlap.screen.plan;

import blindlap.desk.HelperDays;
import blindlap.desk.HelperSheets;
import blindlap.desk.PlanPreview;
import blindlap.desk.Planning;
import blindlap.desk.RiderHistory;
import blindlap.plan.DayAnswer;
import blindlap.plan.EarlierNoise;
import blindlap.plan.Plan;
import blindlap.screen.part.Background;
import blindlap.screen.part.Shell;
import blindlap.screen.part.TypedForm;
import blindlap.wording.PlanWords;
import blindlap.wording.day.Trouble;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Map;
import java.util.Optional;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;

/**
 * The Plan page: a draft as typed, what is wrong with it, and what such a day can show. Drafts are
 * kept as they are; committing is {@link CommitModel}'s.
 */
public final class PlanModel implements PlanInHand {
  private final Planning planning;
  private final Background background;
  private final TypedForm form = new TypedForm(this::changed);
  private final PlanAnswerModel answer;
  private final CommitModel commit;
  private final PracticeModel practice;
  private final PlanDrafts drafts;
  private final ObservableList<String> problems = FXCollections.observableArrayList();
  private final ObservableList<PlanMend> mends = FXCollections.observableArrayList();
  private final ObservableList<String> hints = FXCollections.observableArrayList();
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper title = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper saved = new ReadOnlyStringWrapper("");
  private final ReadOnlyBooleanWrapper complete = new ReadOnlyBooleanWrapper();
  private final ReadOnlyObjectWrapper<Optional<Plan>> plan =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final PlanUndo undo = new PlanUndo(form, this::restore);
  private final PlanDivideModel divide;
  private final PlanFiles files;
  private final PlanRules rules;
  private final PlanNoise noise;
  private final PlanStarters starters;
  private final PlanCopies copies;
  private final PlanTiming timing;
  private final Shell shell;
  private final Clock clock;
  private String name;
  private boolean filling;
  private boolean dirty;
  private int turns;

  /**
   * @param days days to simulate for each answer; 0 for the formula only
   */
  public PlanModel(
      Planning planning,
      RiderHistory history,
      HelperSheets sheets,
      HelperDays helpers,
      Clock clock,
      Shell shell,
      Background background,
      int days) {
    this.planning = planning;
    this.rules = new PlanRules(form, planning.protocols(), plan.getReadOnlyProperty(), this::step);
    this.noise = new PlanNoise(form, history, background, plan.getReadOnlyProperty(), this::step);
    this.starters = new PlanStarters(form, planning.starter(), this::step);
    this.timing = new PlanTiming(planning, form, plan.getReadOnlyProperty());
    this.files = new PlanFiles(planning, background, trouble::set);
    this.background = background;
    this.clock = clock;
    this.shell = shell;
    this.copies =
        new PlanCopies(planning, shell, form, plan.getReadOnlyProperty(), this::start, this::step);
    this.answer = new PlanAnswerModel(planning.answers(), noise::earlier, background);
    this.noise.whenKnown(this::judge);
    shell.pageProperty().addListener((o, before, now) -> asked());
    this.answer.simulate(days);
    this.divide = new PlanDivideModel(form, planning.answers(), background, this::step, days != 0);
    this.commit = new CommitModel(planning, sheets, helpers, clock, shell, background, this);
    this.practice = new PracticeModel(form, clock);
    this.drafts = new PlanDrafts(planning);
    this.name = drafts.latest().orElseGet(drafts::freshName);
    fill(name, drafts.fields(name).orElseGet(() -> PlanStart.fields(clock)));
    drafts.list();
    shell.draftProperty().get().ifPresent(this::open);
    shell.draftProperty().addListener((o, before, now) -> now.ifPresent(this::open));
    asked();
    plan.get().ifPresent(now -> PlanAhead.prepare(now, planning, background));
  }

  /** A new plan, if another page asked for one. */
  private void asked() {
    noise.lookAgain();
    if (shell.pageProperty().get() == Shell.Page.PLAN) {
      shell.takeBeginning().ifPresent(this::start);
    }
  }

  /** The draft as typed. */
  public TypedForm form() {
    return form;
  }

  /** What the day can show. */
  public PlanAnswerModel answer() {
    return answer;
  }

  PlanDivideModel divide() {
    return divide;
  }

  @Override
  public Optional<DayAnswer> answered() {
    return answer.latest();
  }

  /** Swaps practised before the day. */
  PracticeModel practice() {
    return practice;
  }

  /** The way from a draft to a sealed session. */
  public CommitModel commit() {
    return commit;
  }

  /** Drafts that are kept. */
  public ObservableList<PlanDrafts.Draft> drafts() {
    return drafts.kept();
  }

  /** What is wrong, a sentence each with its place; most stand beside their fields too. */
  public ObservableList<String> problems() {
    return problems;
  }

  /** The same with the fields they are about. */
  public ObservableList<PlanMend> mends() {
    return mends;
  }

  /** What the tester should know, a sentence each. */
  public ObservableList<String> hints() {
    return hints;
  }

  /** What went wrong with keeping or reading a draft; empty if nothing did. */
  public ReadOnlyStringProperty troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  /** "Saved 14:32:07" once the disk has the draft; empty while it has not. */
  public ReadOnlyStringProperty savedProperty() {
    return saved.getReadOnlyProperty();
  }

  /** What the tester would call the draft. */
  public ReadOnlyStringProperty titleProperty() {
    return title.getReadOnlyProperty();
  }

  /** True if nothing is wrong and the plan can be committed. */
  @Override
  public ReadOnlyBooleanProperty completeProperty() {
    return complete.getReadOnlyProperty();
  }

  /** The plan as far as it can be read. */
  @Override
  public ReadOnlyObjectProperty<Optional<Plan>> planProperty() {
    return plan.getReadOnlyProperty();
  }

  /** The measure whose difference decides; the first one while none is primary. */
  public Optional<TypedForm> primary() {
    return rules.primary();
  }

  /** The rider's noise from earlier days. */
  public PlanNoise noise() {
    return noise;
  }

  /** The rule for the order. */
  public PlanRules rules() {
    return rules;
  }

  /** Drafts that are copies, and the series they stay in. */
  public PlanCopies copies() {
    return copies;
  }

  /** Starting sets of components and measures. */
  public PlanStarters starters() {
    return starters;
  }

  /** The trail's versions and gates. */
  PlanTiming timing() {
    return timing;
  }

  /** The fields as they would be committed. */
  @Override
  public Map<String, Object> fields() {
    return form.tree();
  }

  @Override
  public EarlierNoise earlier() {
    return noise.earlier();
  }

  private void fill(String draft, Map<String, ?> fields) {
    name = draft;
    quietly(() -> form.fill(PlanStart.readable(fields)));
    dirty = false;
    saved.set("");
    undo.open(draft, form.tree());
    judge();
    copies.opened(draft);
  }

  private void changed() {
    if (filling) {
      return;
    }
    dirty = true;
    saved.set("");
    undo.changed(form.tree());
    judge();
  }

  private void judge() {
    Map<String, Object> fields = form.tree();
    title.set(PlanWords.title(fields));
    PlanPreview preview = planning.preview(fields, noise::earlier);
    PlanJudgement.of(preview).tell(form, problems, mends, hints);
    int turn = ++turns;
    plan.set(preview.plan());
    if (turn != turns) {
      return; // Earlier days were heard of meanwhile, and the plan is judged with them.
    }
    complete.set(preview.judged() && preview.problems().isEmpty());
    answer.show(preview, this::judge);
    divide.show(preview);
  }

  /** Keeps the draft on disk if anything was typed since; called when a field is left. */
  @Override
  public void keep() {
    undo.settle();
    if (!dirty) {
      return;
    }
    dirty = false;
    Map<String, Object> fields = form.tree();
    String draft = name;
    background.run(
        () -> {
          planning.keep(draft, fields);
          return PlanWords.saved(clock.instant().atZone(clock.getZone()));
        },
        words -> {
          trouble.set("");
          saved.set(dirty ? "" : words);
          drafts.list();
        },
        this::fail);
  }

  private void fail(Exception problem) {
    dirty = true;
    trouble.set(PlanWords.say("not.kept", Trouble.sentence(problem)));
  }

  /** Starts an empty draft of this kind; the one before is kept. */
  public void start(Shell.Beginning as) {
    start(PlanStart.fields(clock, as));
  }

  /** Opens another draft; the one before is kept. */
  public void open(PlanDrafts.Draft draft) {
    open(draft.name());
  }

  private void open(String draft) {
    keep();
    Map<String, Object> fields = drafts.fields(draft).orElse(null);
    if (fields != null && commit.stepProperty().get() == CommitModel.Step.EDITING) {
      fill(draft, fields);
      drafts.list();
    }
  }

  /** Forgets the draft on the page, which has become a session, and starts afresh. */
  @Override
  public void forget() {
    undo.forget(name);
    planning.forget(name);
    fill(drafts.freshName(), PlanStart.fields(clock));
    drafts.list();
  }

  /** Deletes the draft on the page; it can be brought back as long as the window is open. */
  public void delete() {
    drafts.delete(name, form.tree());
    fill(drafts.freshName(), PlanStart.fields(clock));
    drafts.list();
  }

  String draft() {
    return name;
  }

  /** Drafts that were deleted and can be brought back, the latest first. */
  public ObservableList<PlanDrafts.Deleted> deleted() {
    return drafts.deleted();
  }

  /** Brings the draft back that was deleted last. */
  public void bringBack() {
    if (!deleted().isEmpty()) {
      keep();
      PlanDrafts.Deleted draft = deleted().remove(0);
      fill(draft.name(), draft.fields());
      dirty = true;
      keep();
    }
  }

  /** What can be taken back, and what done again. */
  public PlanUndo undo() {
    return undo;
  }

  private void restore(Runnable change) {
    quietly(change);
    dirty = true;
    judge();
    keep();
  }

  private void quietly(Runnable change) {
    filling = true;
    change.run();
    filling = false;
  }

  /** A change of several fields that is one step. */
  void step(Runnable change) {
    undo.settle();
    Map<String, Object> before = form.tree();
    quietly(change);
    if (!form.tree().equals(before)) {
      changed();
    }
    undo.settle();
  }

  /** A new draft with these fields; the one before is kept. */
  private void start(Map<String, Object> fields) {
    keep();
    fill(drafts.freshName(), fields);
    dirty = true;
    keep();
  }

  /** Starts a draft from a plan file; keeps the draft before, and this one if it cannot be read. */
  public void startFromFile(Path file) {
    files.read(file, this::start);
  }

  /** Writes the draft as a plan file. */
  public void writeFile(Path file) {
    files.write(file, form.tree());
  }

  /** Says something on top of the page. */
  @Override
  public void say(String words) {
    trouble.set(words);
  }
}

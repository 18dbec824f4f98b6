package blindlap.screen.plan;

import blindlap.plan.PlanOptions;
import blindlap.screen.part.DateField;
import blindlap.screen.part.Dialogs;
import blindlap.screen.part.Fields;
import blindlap.screen.part.FocusInView;
import blindlap.screen.part.Look;
import blindlap.screen.part.MarginNote;
import blindlap.screen.part.PageGrid;
import blindlap.screen.part.TypedForm;
import blindlap.wording.PlanWords;
import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.beans.value.ChangeListener;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/**
 * The Plan page, in the order in which a day is thought out: the question, setups, measures, the
 * day, what it can show, the commit. What it can show is in sight at the lower edge all the time.
 */
public final class PlanPage extends StackPane {
  private final Look look;
  private final PlanModel model;
  private final PageGrid grid;
  private final BorderPane editing = new BorderPane();
  private final CommitPane commit;
  private final FocusInView inView;
  private final PlanUndoKeysView keys;
  private final ChangeListener<Node> focus = (o, before, now) -> left(now);

  public PlanPage(Look look, PlanModel model, Dialogs dialogs) {
    this.look = look;
    this.model = model;
    this.grid = new PageGrid(look);
    this.inView = new FocusInView(grid);
    this.keys =
        new PlanUndoKeysView(this::editing, model.undo()::inField, this::takeBack, this::doAgain);
    this.commit = new CommitPane(look, model.commit(), dialogs);
    build(dialogs);
    editing.setCenter(grid);
    PlanBarView bar = new PlanBarView(look, model, this::takeBack, this::doAgain, this::mendFirst);
    editing.setBottom(bar);
    editing.heightProperty().addListener((o, before, now) -> bar.within(now.doubleValue()));
    model.commit().stepProperty().addListener((o, before, now) -> show(now));
    show(model.commit().stepProperty().get());
    sceneProperty().addListener((o, before, now) -> watch(before, now));
  }

  private void watch(@Nullable Scene before, @Nullable Scene now) {
    if (before != null) {
      before.focusOwnerProperty().removeListener(focus);
    }
    if (now != null) {
      now.focusOwnerProperty().addListener(focus);
    }
    inView.watch(now);
    keys.watch(now);
    model.keep();
  }

  private boolean editing() {
    return model.commit().stepProperty().get() == CommitModel.Step.EDITING;
  }

  private void show(CommitModel.Step step) {
    getChildren().setAll(step == CommitModel.Step.EDITING ? editing : commit);
    if (step == CommitModel.Step.EDITING) {
      commit.clear();
    } else {
      commit.show(step);
    }
  }

  private void build(Dialogs dialogs) {
    PlanAnswerPane answer = new PlanAnswerPane(look, model.answer());
    PlanTelling telling = model.rules().telling();
    grid.add(top(dialogs));
    grid.add(question(model.form()));
    grid.addWide(new PlanTellingView(model.form(), telling));
    grid.addWide(
        Fields.section(
            PlanFieldsView.heading("head.setups"),
            Fields.words(PlanWords.say("note.setups"), "second"),
            new PlanSetupsView(look, model)));
    grid.addWide(
        Fields.section(
            PlanFieldsView.heading("head.measures"),
            measured(telling),
            new PlanMeasuresView(model)));
    grid.add(workshop());
    grid.add(PlanDayView.day(model, answer.strip()), note("day"));
    PlanDivideView divide = new PlanDivideView(look, model.divide());
    PlanTellingView.shownWhile(divide, telling.alone().not());
    grid.addWide(divide);
    grid.addWide(
        new PlanBlindView(look, model.form().part("blinding"), telling.alone().not(), model::step));
    PlanKnobsView knobs = new PlanKnobsView(model);
    PlanTellingView.shownWhile(knobs, telling.alone().not());
    grid.add(
        Fields.section(answer.answer(), answer.waiting(), answer.lead(), knobs), answer.swaps());
    grid.add(answer.trials());
    grid.add(answer.curve(), note("curve"));
    grid.add(answer.odds(), note("odds"));
    grid.add(answer.measures());
    grid.add(answer.left());
    grid.add(answer.statistician());
    grid.add(Fields.section(new PlanEndView(model, this::jump)));
  }

  private static Label measured(PlanTelling telling) {
    Label words = Fields.words("", "second");
    words
        .textProperty()
        .bind(
            Bindings.when(telling.chosen())
                .then(PlanWords.say("note.measures.telling"))
                .otherwise(PlanWords.say("note.measures")));
    return words;
  }

  private static MarginNote note(String key) {
    return new MarginNote(PlanWords.say("note." + key + ".title"), PlanWords.say("note." + key));
  }

  private VBox top(Dialogs dialogs) {
    Label title = Fields.words("", "second");
    title.textProperty().bind(model.titleProperty());
    Label trouble = Fields.words("", "strong");
    trouble.textProperty().bind(model.troubleProperty());
    trouble.managedProperty().bind(trouble.textProperty().isNotEmpty());
    return Fields.section(title, trouble, new PlanDraftsView(model, dialogs));
  }

  private VBox question(TypedForm form) {
    return Fields.section(
        PlanFieldsView.heading("head.question"),
        PlanFieldsView.area(form.field("question"), "question"),
        Fields.row(
            PlanFieldsView.text(form, "rider", 13),
            PlanFieldsView.text(form, "trail", 13),
            trailVersion(model.timing()),
            Fields.helped(
                DateField.of(form.field("day"), PlanWords.field("day"), PlanWords.example("day")),
                PlanWords.help("day")),
            Fields.helped(
                Fields.choice(
                    form.field("kind"),
                    PlanWords.field("session"),
                    PlanOptions.of("session"),
                    PlanWords.say("default.session")),
                PlanWords.help("session"))),
        versions(model.timing()),
        PlanFieldsView.area(form.field("conditions"), "conditions"),
        PlanFieldsView.fold(
            "head.expectations",
            new VBox(
                10,
                Fields.words(PlanWords.say("note.expectations"), "second"),
                claimed(model.rules().telling()),
                new PlanExpectationsView(model))));
  }

  /** What is claimed before a telling run is what it is about. */
  private static Label claimed(PlanTelling telling) {
    Label words = Fields.words(PlanWords.say("note.expectations.telling"), "second");
    PlanTellingView.shownWhile(words, telling.chosen());
    return words;
  }

  /** There to be chosen where the trail book has the trail. */
  private static VBox trailVersion(PlanTiming timing) {
    VBox field =
        Fields.helped(
            Fields.text(timing.number(), PlanWords.field("trail_version"), "", 4),
            PlanWords.help("trail_version"));
    field.visibleProperty().bind(timing.offeredProperty());
    field.managedProperty().bind(field.visibleProperty());
    return field;
  }

  private static Label versions(PlanTiming timing) {
    Label words = Fields.words("", "second");
    words.textProperty().bind(timing.wordsProperty());
    words.managedProperty().bind(words.textProperty().isNotEmpty());
    return words;
  }

  private static VBox workshop() {
    return Fields.section(
        PlanFieldsView.fold("head.workshop", new WorkshopPane(new WorkshopModel())));
  }

  /** A field was left: the draft is kept, and what has the focus now is brought into view. */
  private void left(@Nullable Node now) {
    model.keep();
    keys.focus(now);
    inView.focus(now);
  }

  private void jump(String path) {
    PlanPlacesView.go(grid, model.form(), path);
  }

  private void mendFirst() {
    model.mends().stream().findFirst().ifPresent(mend -> jump(mend.path()));
  }

  private void takeBack() {
    went(model.undo().takeBack());
  }

  private void doAgain() {
    went(model.undo().doAgain());
  }

  private void went(Optional<String> path) {
    path.ifPresent(this::jump);
  }
}

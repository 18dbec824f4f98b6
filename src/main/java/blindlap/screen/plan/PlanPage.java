package blindlap.screen.plan;

import blindlap.plan.PlanOptions;
import blindlap.screen.part.Caution;
import blindlap.screen.part.Dialogs;
import blindlap.screen.part.Fields;
import blindlap.screen.part.FocusInView;
import blindlap.screen.part.Look;
import blindlap.screen.part.MarginNote;
import blindlap.screen.part.PageGrid;
import blindlap.screen.part.TypedForm;
import blindlap.wording.PlanWords;
import java.util.List;
import javafx.beans.value.ChangeListener;
import javafx.collections.ListChangeListener;
import javafx.collections.ObservableList;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.TitledPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** The Plan page: what can this day show? Knobs on top, the plan below, the commit at the end. */
public final class PlanPage extends StackPane {
  private final Look look;
  private final PlanModel model;
  private final Dialogs dialogs;
  private final PageGrid grid;
  private final CommitPane commit;
  private final FocusInView inView;
  private final ChangeListener<Node> focus = (o, before, now) -> left(now);

  public PlanPage(Look look, PlanModel model, Dialogs dialogs) {
    this.look = look;
    this.model = model;
    this.dialogs = dialogs;
    this.grid = new PageGrid(look);
    this.inView = new FocusInView(grid);
    this.commit = new CommitPane(look, model.commit(), dialogs);
    build();
    model.commit().stepProperty().addListener((o, before, now) -> show(now));
    show(model.commit().stepProperty().get());
    sceneProperty().addListener((o, before, now) -> watch(before, now));
  }

  private void watch(
      @org.jspecify.annotations.Nullable Scene before,
      @org.jspecify.annotations.Nullable Scene now) {
    if (before != null) {
      before.focusOwnerProperty().removeListener(focus);
    }
    if (now != null) {
      now.focusOwnerProperty().addListener(focus);
    }
    inView.watch(now);
    model.keep();
  }

  private void show(CommitModel.Step step) {
    getChildren().setAll(step == CommitModel.Step.EDITING ? grid : commit);
    if (step == CommitModel.Step.EDITING) {
      commit.clear();
    } else {
      commit.show(step);
    }
  }

  private void build() {
    PlanAnswerPane answer = new PlanAnswerPane(look, model.answer());
    TypedForm form = model.form();
    grid.add(Fields.section(top(), answer.answer(), answer.lead()), answer.orders());
    grid.add(new PlanKnobsView(model));
    grid.add(Fields.section(PlanFieldsView.heading("head.curve"), answer.curve()), note("curve"));
    grid.add(answer.odds(), note("odds"));
    grid.add(answer.measures());
    grid.add(answer.left());
    grid.add(drafts());
    grid.add(question(form));
    grid.add(
        Fields.section(
            PlanFieldsView.heading("head.expectations"), new PlanExpectationsView(model)),
        note("expectations"));
    grid.addWide(
        Fields.section(
            PlanFieldsView.heading("head.setups"),
            Fields.words(PlanWords.say("note.setups"), "second"),
            new PlanSetupsView(model)));
    grid.addWide(
        Fields.section(
            PlanFieldsView.heading("head.measures"),
            Fields.words(PlanWords.say("note.measures"), "second"),
            new PlanMeasuresView(model)));
    grid.add(day(form, answer), note("day"));
    grid.add(blinding(form.part("blinding")));
    grid.add(workshop());
    grid.add(end());
  }

  private static MarginNote note(String key) {
    return new MarginNote(
        PlanWords.say("note." + key + ".title"),
        PlanWords.has("note." + key) ? PlanWords.say("note." + key) : "");
  }

  private VBox drafts() {
    ComboBox<PlanDrafts.Draft> list = new ComboBox<>(model.drafts());
    list.setPromptText(PlanWords.say("drafts"));
    list.setAccessibleText(PlanWords.say("drafts"));
    list.setId("drafts");
    list.setOnAction(
        e -> {
          PlanDrafts.Draft chosen = list.getValue();
          if (chosen != null) {
            model.open(chosen);
          }
        });
    Button fresh = Fields.button(PlanWords.say("draft.new"), model::startFresh);
    Button forget = Fields.button(PlanWords.say("draft.forget"), model::forget);
    Button read =
        Fields.button(
            PlanWords.say("draft.import"),
            () -> dialogs.openFile(PlanWords.say("draft.import")).ifPresent(model::startFromFile));
    Button write =
        Fields.button(
            PlanWords.say("draft.export"),
            () ->
                dialogs
                    .saveFile(PlanWords.say("draft.export"), PlanWords.say("export.file"))
                    .ifPresent(model::writeFile));
    Button copy = Fields.button(PlanWords.say("draft.copy"), model::startFromOpenSession);
    copy.disableProperty().bind(model.sessionOpenProperty().not());
    FlowPane row = Fields.row(list, fresh, copy, read, write, forget);
    row.getChildren().forEach(node -> node.getStyleClass().add("quiet"));
    return Fields.section(PlanFieldsView.heading("head.drafts"), row);
  }

  private FlowPane top() {
    Label title = Fields.words("", "second");
    title.textProperty().bind(model.titleProperty());
    Label saved = Fields.words("", "note", "second");
    saved.textProperty().bind(model.savedProperty());
    Label trouble = Fields.words("", "strong");
    trouble.textProperty().bind(model.troubleProperty());
    trouble.managedProperty().bind(model.troubleProperty().isNotEmpty());
    return Fields.row(title, saved, trouble);
  }

  private VBox question(TypedForm form) {
    return Fields.section(
        PlanFieldsView.heading("head.question"),
        Fields.area(
            form.field("question"), PlanWords.field("question"), PlanWords.help("question")),
        Fields.row(
            PlanFieldsView.text(form, "rider", 14),
            PlanFieldsView.text(form, "trail", 16),
            PlanFieldsView.text(form, "day", 10),
            Fields.choice(
                form.field("kind"),
                PlanWords.field("session"),
                PlanOptions.of("session"),
                PlanWords.say("default.session"))),
        Fields.area(form.field("conditions"), PlanWords.field("conditions"), ""));
  }

  private VBox day(TypedForm form, PlanAnswerPane answer) {
    TypedForm laps = form.part("laps");
    TypedForm table = form.part("timetable");
    FlowPane numbers =
        Fields.row(
            PlanFieldsView.text(laps, "warm_up", 4),
            PlanFieldsView.text(laps, "settling", 4),
            PlanFieldsView.text(laps, "scored", 4));
    FlowPane clock =
        Fields.row(
            PlanFieldsView.text(table, "zone", 12),
            PlanFieldsView.text(table, "start", 5),
            PlanFieldsView.text(table, "daylight_end", 5));
    FlowPane minutes = Fields.row();
    for (String field :
        List.of(
            "lap", "climb", "swap", "scoring", "cool_down", "rest_every", "rest", "lap_budget")) {
      minutes.getChildren().add(PlanFieldsView.text(table, field, 4));
    }
    minutes.getChildren().add(PlanFieldsView.text(table, "practised", 24));
    TitledPane practice =
        new TitledPane(PlanWords.say("practice.title"), new PracticePane(model.practice()));
    practice.setExpanded(false);
    practice.setAnimated(false);
    practice.expandedProperty().addListener((o, before, now) -> model.practice().say());
    return Fields.section(
        PlanFieldsView.heading("head.day"), answer.strip(), numbers, clock, minutes, practice);
  }

  private VBox blinding(TypedForm form) {
    VBox box =
        Fields.section(
            PlanFieldsView.heading("head.blinding"),
            Fields.row(
                PlanFieldsView.yesNo(form, "blinded"),
                PlanFieldsView.text(form, "helper", 14),
                PlanFieldsView.yesNo(form, "guesses"),
                PlanFieldsView.choice(form, "times", PlanOptions.of("times"))));
    FlowPane texts = Fields.row();
    for (String field :
        List.of(
            "cover",
            "ballast",
            "noise",
            "rider_waits",
            "helper_waits",
            "bike_moved_by",
            "levers_touched_by",
            "others_who_know",
            "timed_by",
            "remaining_cues")) {
      String title =
          PlanWords.has("field.blinding." + field)
              ? PlanWords.field("blinding." + field)
              : PlanWords.field(field);
      texts.getChildren().add(Fields.text(form.field(field), title, "", 22));
    }
    box.getChildren().add(texts);
    return box;
  }

  private static TitledPane workshopPane() {
    TitledPane pane =
        new TitledPane(PlanWords.say("head.workshop"), new WorkshopPane(new WorkshopModel()));
    pane.setExpanded(false);
    pane.setAnimated(false);
    return pane;
  }

  private static VBox workshop() {
    return Fields.section(workshopPane());
  }

  private VBox end() {
    VBox problems = new VBox(4);
    VBox hints = new VBox(4);
    VBox problemBox = Fields.section(PlanFieldsView.heading("head.problems"), problems);
    VBox hintBox = Fields.section(PlanFieldsView.heading("head.hints"), hints);
    lines(model.problems(), problems, problemBox, "strong");
    lines(model.hints(), hints, hintBox, "second");
    Button begin = Fields.button(PlanWords.say("commit.begin"), model.commit()::begin);
    begin.getStyleClass().add("next");
    begin.setId("commit-begin");
    begin.disableProperty().bind(model.completeProperty().not());
    Label message = Fields.words("", "strong");
    message.textProperty().bind(model.commit().messageProperty());
    message.managedProperty().bind(message.textProperty().isNotEmpty());
    VBox box =
        Fields.section(
            problemBox,
            hintBox,
            override(),
            PlanFieldsView.heading("head.series"),
            Fields.words(PlanWords.say("series.what"), "second"),
            Fields.row(
                PlanFieldsView.text(model.form(), "series", 24),
                PlanFieldsView.text(model.form(), "series_sessions", 6)),
            new Caution(PlanWords.say("caution") + ".", model.caution()),
            PlanFieldsView.heading("head.commit"),
            begin,
            message,
            Fields.words(PlanWords.say("commit.after"), "second"));
    box.setSpacing(16);
    return box;
  }

  /** Asked for only where the plan cannot show anything, and kept in view once it is given. */
  private VBox override() {
    TypedForm.Entry entry = model.form().field("override");
    VBox box = Fields.text(entry, PlanWords.field("override"), "", 40);
    box.visibleProperty()
        .bind(entry.errorProperty().isNotEmpty().or(entry.textProperty().isNotEmpty()));
    box.managedProperty().bind(box.visibleProperty());
    return box;
  }

  private static void lines(ObservableList<String> from, VBox to, VBox around, String style) {
    Runnable show =
        () -> {
          to.getChildren().setAll(from.stream().map(l -> Fields.words(l, style)).toList());
          around.setVisible(!from.isEmpty());
          around.setManaged(!from.isEmpty());
        };
    from.addListener((ListChangeListener<String>) change -> show.run());
    show.run();
  }

  /** A field was left: the draft is kept, and what has the focus now is brought into view. */
  private void left(@org.jspecify.annotations.Nullable Node now) {
    model.keep();
    inView.focus(now);
  }
}

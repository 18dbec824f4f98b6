package blindlap.screen.review;

import static blindlap.screen.part.ReviewParts.WORDS;
import static blindlap.screen.part.ReviewParts.h2;
import static blindlap.screen.part.ReviewParts.section;
import static blindlap.screen.part.ReviewParts.words;

import blindlap.plan.Plan;
import blindlap.plot.surface.Drawing;
import blindlap.screen.part.AnswerSentence;
import blindlap.screen.part.AskedOnce;
import blindlap.screen.part.Lead;
import blindlap.screen.part.Look;
import blindlap.screen.part.MarginNote;
import blindlap.screen.part.PageGrid;
import blindlap.screen.part.PlotView;
import blindlap.screen.part.ReviewParts;
import blindlap.session.SessionState;
import blindlap.wording.AloneWords;
import blindlap.wording.RecordingsWords;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.PasswordField;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;

/**
 * The blind review: laps by code in ridden order, without setups, letters or guesses. No ink of a
 * setup stands on this page.
 */
public final class BlindReviewPage extends VBox {
  private static final double CODE_SIDE = 200;

  private final Look look;
  private final BlindReviewModel model;
  private final PageGrid page;

  public BlindReviewPage(Look look, BlindReviewModel model) {
    this.look = look;
    this.model = model;
    this.page = new PageGrid(look);
    javafx.scene.layout.VBox.setVgrow(page, javafx.scene.layout.Priority.ALWAYS);
    getChildren().setAll(page);
    model.viewProperty().addListener((o, before, now) -> build(now));
    build(model.viewProperty().get());
  }

  private void build(Optional<BlindReviewView> view) {
    page.clear();
    view.ifPresent(this::build);
  }

  private void build(BlindReviewView view) {
    boolean trials = !view.trials().isEmpty();
    head(view, trials);
    for (Drawing picture : view.pictures()) {
      page.add(
          new VBox(10, words(picture.spoken().sentence(), "strong"), new PlotView(look, picture)));
    }
    if (trials) {
      page.addWide(new VBox(10, h2("trials"), trials(view.trials())));
    }
    if (!trials || !view.measures().isEmpty()) {
      page.addWide(new VBox(10, h2("laps"), table(view)));
    }
    if (!view.twice().isEmpty()) {
      page.add(new TwoValuesView(model, view));
    }
    SectorVoids sectors = model.sectors();
    if (!sectors.sectors().isEmpty() && !(view.closed() && sectors.standing().isEmpty())) {
      page.add(new SectorVoidsView(sectors, view.closed()));
    }
    if (!view.corrections().isEmpty()) {
      page.add(section("corrections", view.corrections()));
    }
    List<String> recordings = RecordingsWords.lines(model.session());
    if (!recordings.isEmpty()) {
      page.add(section("recordings", recordings));
    }
    if (view.closed()) {
      page.add(fingerprint(view));
      page.add(open());
    } else {
      byCode().ifPresent(page::add);
      if (!trials || !view.measures().isEmpty()) {
        page.add(correct(view));
      }
      page.add(close());
    }
  }

  private void head(BlindReviewView view, boolean trials) {
    AnswerSentence answer =
        new AnswerSentence(look, WORDS.say(trials ? "question.trials" : "question.blind"));
    answer.say(view.answer().before(), view.answer().phrase(), view.answer().after());
    String event = trials ? "note.trials" : "note.event";
    String blind = trials ? "note.blind.trials" : "note.blind.text";
    page.add(
        new VBox(12, answer, new Lead(view.lead()), trouble()),
        new MarginNote(WORDS.say(event), WORDS.say(event + ".text")),
        new MarginNote(WORDS.say("note.blind"), WORDS.say(blind)));
  }

  private Label trouble() {
    Label trouble = words("", "strong");
    trouble.textProperty().bind(model.troubleProperty());
    trouble.managedProperty().bind(trouble.textProperty().isNotEmpty());
    return trouble;
  }

  private static GridPane trials(List<BlindTrials.Row> trials) {
    GridPane table = new GridPane();
    table.setId("trials");
    int column = 0;
    for (String head : List.of("trial", "trial.codes", "trial.standing", "note")) {
      put(table, words(WORDS.say(head), "second"), column++, 0, "table-head");
    }
    int row = 1;
    for (BlindTrials.Row trial : trials) {
      put(table, whole(words(String.valueOf(trial.number()))), 0, row, "table-row");
      put(table, whole(words(trial.codes(), "strong")), 1, row, "table-row");
      put(table, words(trial.standing()), 2, row, "table-row");
      put(table, words(trial.notes()), 3, row++, "table-row");
    }
    return table;
  }

  private GridPane table(BlindReviewView view) {
    GridPane table = new GridPane();
    int column = 0;
    put(table, whole(words(WORDS.say("lap"), "second")), column++, 0, "table-head");
    put(table, whole(words(WORDS.say("code"), "second")), column++, 0, "table-head");
    boolean starts = starts(view);
    if (starts) {
      put(table, whole(words(WORDS.say("start"), "second")), column++, 0, "table-head");
    }
    for (String measure : view.measures()) {
      put(table, words(measure, "second"), column++, 0, "table-head");
    }
    put(table, words(WORDS.say("note"), "second"), column++, 0, "table-head");
    if (view.trials().isEmpty()) {
      put(table, words(WORDS.say("counts"), "second"), column, 0, "table-head");
    }
    int row = 1;
    for (BlindReviewView.Row lap : view.rows()) {
      add(table, view, lap, row++);
    }
    return table;
  }

  /** Laps keyed in from paper have no start, and need no column for it. */
  private static boolean starts(BlindReviewView view) {
    return view.rows().stream().anyMatch(lap -> !lap.start().isEmpty());
  }

  private void add(GridPane table, BlindReviewView view, BlindReviewView.Row lap, int row) {
    int column = 0;
    put(table, whole(words(String.valueOf(lap.number()))), column++, row, "table-row");
    put(table, whole(words(String.valueOf(lap.code()), "strong")), column++, row, "table-row");
    if (starts(view)) {
      put(
          table,
          whole(words(lap.start().isEmpty() ? "–" : lap.start())),
          column++,
          row,
          "table-row");
    }
    for (int i = 0; i < lap.values().size(); i++) {
      Label value = whole(words(lap.values().get(i)));
      if (lap.asked().contains(view.measures().get(i))) {
        value.getStyleClass().add("differs");
      }
      put(table, value, column++, row, "table-row");
    }
    String asked = lap.asked().isEmpty() ? "" : WORDS.say("check");
    String note =
        lap.note().isBlank() || asked.isEmpty() ? asked + lap.note() : asked + ": " + lap.note();
    put(table, words(note), column++, row, "table-row");
    if (view.trials().isEmpty()) {
      put(table, view.closed() ? words(lap.voided()) : decision(lap), column, row, "table-row");
    }
  }

  /** Keep or void; a void asks for its event, a kept lap again asks for nothing. */
  private Node decision(BlindReviewView.Row lap) {
    if (!lap.voided().isEmpty()) {
      Button keep = new Button(WORDS.say("keep"));
      keep.setAccessibleText(WORDS.say("keep") + " " + lap.number());
      keep.setOnAction(e -> model.keep(lap.id(), lap.voided()));
      return new FlowPane(8, 4, words(lap.voided()), keep);
    }
    ComboBox<String> events = new ComboBox<>();
    events.getItems().setAll(BlindReviewModel.events());
    events.setPromptText(WORDS.say("it.counts"));
    events.setAccessibleText(WORDS.say("void") + " " + lap.number());
    VBox cell = new VBox(6, events);
    events.setOnAction(
        e -> {
          if (events.getValue() != null) {
            cell.getChildren().setAll(asked(lap, events, cell));
            cell.lookupAll(".button").stream().findFirst().ifPresent(Node::requestFocus);
          }
        });
    return cell;
  }

  /** What a void does is said before it is made. */
  private Node asked(BlindReviewView.Row lap, ComboBox<String> events, VBox cell) {
    String event = events.getValue().toLowerCase(Locale.ROOT);
    Button not = new Button(WORDS.say("void.not"));
    not.setOnAction(
        e -> {
          events.setValue(null);
          cell.getChildren().setAll(events);
        });
    Button make = new Button(WORDS.say("void.do", lap.number()));
    make.setOnAction(e -> model.voidLap(lap.id(), event));
    return new VBox(
        6, words(WORDS.say("void.follows", lap.number(), event)), new FlowPane(8, 4, not, make));
  }

  /** A number that no wide cell beside it may break in two. */
  private static Label whole(Label number) {
    number.setWrapText(false);
    number.setMinWidth(Label.USE_PREF_SIZE);
    return number;
  }

  private static void put(GridPane table, Node content, int column, int row, String style) {
    VBox cell = new VBox(content);
    cell.getStyleClass().add(style);
    cell.setMaxSize(Double.MAX_VALUE, Double.MAX_VALUE);
    GridPane.setHgrow(cell, javafx.scene.layout.Priority.ALWAYS);
    table.add(cell, column, row);
  }

  private VBox correct(BlindReviewView view) {
    TextField lap = ReviewParts.field("correct.lap");
    lap.setPrefColumnCount(4);
    ComboBox<String> measure = new ComboBox<>();
    Plan plan = model.session().plan();
    measure
        .getItems()
        .setAll(
            view.measures().stream()
                .filter(name -> plan.measure(name).map(m -> m.timing().by().asked()).orElse(true))
                .toList());
    measure.setPromptText(WORDS.say("measure"));
    measure.setAccessibleText(WORDS.say("measure"));
    TextField value = ReviewParts.field("correct.value");
    TextField reason = ReviewParts.field("correct.reason");
    Button correct = new Button(WORDS.say("correct.do"));
    correct.setOnAction(
        e -> {
          String chosen = measure.getValue();
          if (chosen != null) {
            model.correct(lap.getText(), chosen, value.getText(), reason.getText());
          }
        });
    return new VBox(10, h2("correct"), new FlowPane(12, 8, lap, measure, value, reason, correct));
  }

  private VBox close() {
    AskedOnce close =
        new AskedOnce(
            look,
            new AskedOnce.Words(
                WORDS.say("close"), WORDS.say("close.follows"), WORDS.say("close.not")),
            model::close);
    close.first().getStyleClass().add("next");
    VBox box = new VBox(10);
    // What can never be added again is asked for before the key that ends it.
    RecordingsWords.awaited(model.session())
        .forEach(line -> box.getChildren().add(words(line, "strong")));
    box.getChildren().addAll(close, words(WORDS.say("close.why"), "second"));
    return box;
  }

  private VBox fingerprint(BlindReviewView view) {
    VBox box = new VBox(10, h2("fingerprint"), words(view.fingerprint(), "strong"));
    box.getChildren().add(words(WORDS.say("fingerprint.text")));
    view.code()
        .ifPresent(
            code -> {
              PlotView picture = new PlotView(look, code);
              picture.setMaxWidth(CODE_SIDE);
              box.getChildren().add(picture);
            });
    return box;
  }

  /** What somebody scores later stands on a page of its own, which tells no order. */
  private Optional<VBox> byCode() {
    if (model.assessors().isEmpty()) {
      return Optional.empty();
    }
    VBox box = new VBox(10, words(AloneWords.say("code.title"), "h2"));
    box.getChildren().add(words(AloneWords.say("code.offer"), "second"));
    for (String assessor : model.assessors()) {
      Button open = new Button(AloneWords.say("code.open", assessor));
      open.setWrapText(true);
      open.setOnAction(e -> score(assessor));
      box.getChildren().add(open);
    }
    return Optional.of(box);
  }

  private void score(String assessor) {
    page.clear();
    page.setVvalue(0);
    page.add(new ByCodeView(look, model.byCode(assessor), () -> build(model.viewProperty().get())));
  }

  /** A covered order opens without a phrase; of masked labels it is guessed first. */
  private VBox open() {
    SessionState session = model.session();
    if (MasksModel.asksGuess(session)) {
      return MasksView.guess(look, model.masks(), session);
    }
    return session.covered() ? uncover() : unseal(session.plan().level().friend() ? ".friend" : "");
  }

  private VBox uncover() {
    Button open = new Button(WORDS.say("uncover"));
    open.getStyleClass().add("next");
    open.setOnAction(e -> model.uncover());
    return new VBox(10, h2("uncover"), words(WORDS.say("uncover.why"), "second"), open, trouble());
  }

  /**
   * @param whose the end of the keys of words on the phrase, which is the helper's or a friend's
   */
  private VBox unseal(String whose) {
    PasswordField phrase = new PasswordField();
    phrase.setPromptText(WORDS.say("phrase" + whose));
    phrase.setAccessibleText(WORDS.say("phrase" + whose));
    phrase.setPrefColumnCount(32);
    Button open = new Button(WORDS.say("unseal"));
    open.getStyleClass().add("next");
    open.setOnAction(e -> model.unseal(phrase.getText()));
    phrase.setOnAction(e -> open.fire()); // Enter, as where the helper opens the day
    return new VBox(
        10,
        h2("unseal"),
        words(WORDS.say("unseal.why" + whose), "second"),
        new HBox(12, phrase, open),
        trouble());
  }
}

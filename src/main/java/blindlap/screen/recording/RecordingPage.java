package blindlap.screen.recording;

import blindlap.desk.Settling;
import blindlap.screen.part.AnswerSentence;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.Dialogs;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.PageGrid;
import blindlap.screen.part.RoomFrame;
import blindlap.session.TrailTitle;
import blindlap.wording.SettlingRow;
import blindlap.wording.SettlingWords;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.LongSupplier;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** A recording of a ridden day, settled pass by pass: the answer, the table, and what is to do. */
public final class RecordingPage extends BorderPane {
  private final Look look;
  private final RecordingModel model;
  private final Dialogs dialogs;
  private final Deaf deaf;
  private final AnswerSentence answer;
  private final VBox facts = new VBox(4);
  private final VBox rows = new VBox();
  private final VBox foot = new VBox(10);
  private final Button back;
  private final Button open = new Button();
  private final Button take = new Button(SettlingWords.say("page.take"));

  /**
   * @param back leaves the page
   * @param monotonic nanoseconds that only ever grow
   */
  public RecordingPage(
      Look look, RecordingModel model, Dialogs dialogs, Runnable back, LongSupplier monotonic) {
    this.look = look;
    this.model = model;
    this.dialogs = dialogs;
    this.deaf = new Deaf(monotonic);
    this.answer = new AnswerSentence(look, SettlingWords.say("question"), 1);
    this.back = Fields.button(SettlingWords.say("page.back"), back);
    answer.shrink(1);
    deaf.guard(rows);
    Label wrong = Fields.words("", "strong");
    wrong.textProperty().bind(model.troubleProperty());
    Label said = Fields.words("", "strong");
    said.textProperty().bind(model.saidProperty());
    PageGrid page = new PageGrid(look);
    page.addWide(new VBox(8, this.back, answer, facts));
    page.addWide(new VBox(8, rows, wrong, said, foot));
    setCenter(page);
    getStyleClass().add("recording-page");
    model.settlingProperty().addListener((o, before, now) -> show(now));
    open.setOnAction(e -> choose());
    take.getStyleClass().add("next");
    take.setOnAction(e -> model.take());
    this.back.getStyleClass().add("quiet");
    for (Button button : List.of(open, take)) {
      button.minHeightProperty().bind(look.touch());
    }
    setOnKeyPressed(
        e -> {
          if (e.getCode() == KeyCode.ESCAPE) {
            e.consume();
            back.run();
          }
        });
    show(model.settlingProperty().get());
  }

  /** Puts the focus where one begins. */
  public void enter() {
    open.requestFocus();
  }

  private void choose() {
    dialogs.openFile(SettlingWords.say("page.dialog")).ifPresent(model::read);
  }

  private void show(Optional<Settling> in) {
    boolean within = rows.isFocusWithin();
    if (in.isEmpty()) {
      answer.say(SettlingWords.say("page.none.before"), "", SettlingWords.say("page.none.after"));
      facts.getChildren().setAll(fact(SettlingWords.say("page.lead")));
      rows.getChildren().clear();
    } else {
      filled(in.get());
    }
    foot(in);
    if (within) {
      deaf.begin();
      next().requestFocus();
    }
  }

  /** What waits first; else the button that takes all in. */
  private Node next() {
    return rows.getChildren().stream()
        .filter(row -> row.getStyleClass().contains("waits"))
        .map(row -> row.lookup(".button"))
        .filter(Button.class::isInstance)
        .findFirst()
        .orElse(take);
  }

  private void filled(Settling now) {
    List<SettlingRow> all = now.rows();
    said(all);
    facts.getChildren().clear();
    facts
        .getChildren()
        .add(
            fact(
                SettlingWords.say(
                    now.planned() ? "by.plan" : "by.book", now.trail(), now.version())));
    if (!now.line()) {
      facts.getChildren().add(fact(SettlingWords.say("no.line")));
    }
    facts.getChildren().add(fact(SettlingWords.offset(now.offset())));
    if (now.again()) {
      facts.getChildren().add(fact(SettlingWords.say("again")));
    }
    if (now.warmUps() > 0) {
      facts.getChildren().add(fact(SettlingWords.say("warm", now.warmUps())));
    }
    List<Integer> laps = all.stream().map(SettlingRow::lap).filter(Objects::nonNull).toList();
    rows.getChildren()
        .setAll(
            all.stream()
                .map(
                    row ->
                        new RecordingRowView(
                            look,
                            row,
                            row.pass() > 0 && now.answered(row.pass()),
                            laps,
                            model::answer,
                            model::takeBack))
                .toList());
  }

  private void said(List<SettlingRow> all) {
    long laps = all.stream().filter(row -> row.lap() != null).count();
    long found = all.stream().filter(SettlingRow::found).count();
    long waiting = all.stream().filter(row -> row.match().waits()).count();
    String key = waiting > 0 ? "answer.waits" : found == laps ? "answer.all" : "answer.some";
    boolean some = key.equals("answer.some");
    answer.say(
        SettlingWords.say(key + ".before", key.equals("answer.all") ? laps : found, laps) + " ",
        some
            ? SettlingWords.say(key + ".marked", found, laps)
            : SettlingWords.say(key + ".marked", waiting),
        SettlingWords.say(key + ".after"));
  }

  private static Label fact(String words) {
    return Fields.words(words, "second");
  }

  private void foot(Optional<Settling> in) {
    foot.getChildren().clear();
    open.setText(SettlingWords.say(in.isEmpty() ? "page.open" : "page.another"));
    if (in.isEmpty()) {
      if (!model.trails().isEmpty()) {
        foot.getChildren().add(trail());
      }
      foot.getChildren().add(open);
    } else {
      boolean waits = in.get().waiting() > 0;
      take.setDisable(waits);
      Button aside = Fields.button(SettlingWords.say("page.aside"), model::aside);
      aside.minHeightProperty().bind(look.touch());
      CheckBox positions = new CheckBox(SettlingWords.say("page.positions"));
      positions.selectedProperty().bindBidirectional(model.positionsProperty());
      positions.minHeightProperty().bind(look.touch());
      foot.getChildren().addAll(positions, new FlowPane(12, 8, take, open, aside));
      if (waits) {
        foot.getChildren().add(fact(SettlingWords.say("page.take.waits")));
      }
      foot.getChildren().add(fact(SettlingWords.say("recorder")));
    }
    foot.getChildren().add(fact(SettlingWords.say("keeps")));
  }

  private VBox trail() {
    ComboBox<@Nullable TrailTitle> box = new ComboBox<>();
    box.getItems().add(null);
    box.getItems().addAll(model.trails());
    box.valueProperty().bindBidirectional(model.trailProperty());
    VBox chosen =
        RoomFrame.choice(
            SettlingWords.say("page.trail"),
            box,
            title -> SettlingWords.say("page.trail.one", title.name(), title.number()));
    box.setPromptText(SettlingWords.say("page.trail.plan"));
    return chosen;
  }
}

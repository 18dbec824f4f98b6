package blindlap.screen.book;

import static blindlap.screen.part.ReviewParts.lines;
import static blindlap.screen.part.ReviewParts.words;

import blindlap.screen.part.AnswerSentence;
import blindlap.screen.part.AskedOnce;
import blindlap.screen.part.Caution;
import blindlap.screen.part.Dialogs;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Lead;
import blindlap.screen.part.Look;
import blindlap.screen.part.MarginNote;
import blindlap.screen.part.PageGrid;
import blindlap.screen.part.PlotView;
import blindlap.screen.part.RecordTable;
import blindlap.screen.part.RoomFrame;
import blindlap.screen.part.WholeChoice;
import blindlap.wording.SeriesWords;
import blindlap.wording.day.Words;
import java.util.List;
import java.util.stream.Stream;
import javafx.beans.InvalidationListener;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** The room of series: sealed until the end, then the answer, its picture and every session. */
final class SeriesPage extends BorderPane {
  private static final double[] SHARES = {13, 15, 32, 40};
  private static final double[] FACTS = {30, 70};

  private final Look look;
  private final SeriesModel model;
  private final Dialogs dialogs;
  private final PageGrid page;
  private final RoomFrame frame;

  SeriesPage(Look look, SeriesModel model, Dialogs dialogs, Runnable away) {
    this.look = look;
    this.model = model;
    this.dialogs = dialogs;
    this.page = new PageGrid(look);
    ComboBox<SeriesModel.Choice> series = new WholeChoice<>(model.series());
    series.valueProperty().bindBidirectional(model.chosenProperty());
    this.frame =
        new RoomFrame(
            page,
            away,
            RoomFrame.choice(SeriesWords.say("page.choose"), series, SeriesModel.Choice::words));
    setCenter(frame);
    model.viewProperty().addListener((o, before, now) -> show());
    model.repeats().addListener((InvalidationListener) o -> show());
    show();
  }

  void enter() {
    model.refresh();
    frame.enter();
  }

  private void show() {
    SeriesView view = model.viewProperty().get();
    page.clear();
    AnswerSentence answer = new AnswerSentence(look, question(view));
    answer.say(view.headline().before(), view.headline().phrase(), view.headline().after());
    VBox head = new VBox(16, answer);
    view.circumstances().forEach(line -> head.getChildren().add(words(line, "strong")));
    view.lead().forEach(line -> head.getChildren().add(new Lead(line)));
    page.add(head);
    view.picture()
        .ifPresent(
            drawing ->
                page.add(
                    new VBox(10, h2("page.picture"), new PlotView(look, drawing)),
                    new MarginNote(
                        SeriesWords.say("page.picture.title"),
                        SeriesWords.say("page.picture.note"))));
    section("page.measures", view.measures());
    section("page.riders", view.riders());
    section("page.agreement", view.agreement());
    table("page.declared.title", FACTS, List.of(), view.declared());
    table("page.sessions", SHARES, heads(), view.sessions());
    section("page.elsewhere", view.elsewhere());
    section("page.repeats", List.copyOf(model.repeats()));
    if (!view.sessions().isEmpty()) {
      page.add(actions(view));
    }
  }

  private static String question(SeriesView view) {
    return view.question().isEmpty() ? SeriesWords.say("page.question") : view.question();
  }

  private static Label h2(String key) {
    return words(SeriesWords.say(key), "h2");
  }

  private void section(String key, List<String> texts) {
    if (!texts.isEmpty()) {
      page.add(new VBox(10, h2(key), lines(texts)));
    }
  }

  private static List<String> heads() {
    return Stream.of("day", "rider", "standing", "result")
        .map(head -> SeriesWords.say("page.th." + head))
        .toList();
  }

  private void table(String key, double[] shares, List<String> heads, List<List<String>> rows) {
    if (rows.isEmpty()) {
      return;
    }
    VBox box = new VBox(10, h2(key), new RecordTable(look, shares, heads, rows));
    if (heads.isEmpty()) {
      page.add(box);
    } else {
      page.addWide(box);
    }
  }

  /** Reason and name first; the button asks once. */
  private VBox ending() {
    TextField reason = field("reason");
    TextField by = field("by");
    AskedOnce end =
        new AskedOnce(
            look,
            new AskedOnce.Words(
                SeriesWords.say("page.end"),
                SeriesWords.say("page.end.follows"),
                SeriesWords.say("page.end.not")),
            () -> model.end(reason.getText(), by.getText()));
    end.setId("series-end");
    return new VBox(
        8,
        h2("page.end.title"),
        words(SeriesWords.say("page.end.follows"), "note", "second"),
        Fields.row(reason, by),
        end);
  }

  private static TextField field(String name) {
    TextField field = new TextField();
    field.setId("series-end-" + name);
    field.setPromptText(SeriesWords.say("page.end." + name));
    field.setAccessibleText(SeriesWords.say("page.end." + name));
    field.setPrefColumnCount(24);
    return field;
  }

  private VBox actions(SeriesView view) {
    boolean open = view.open();
    Button report = new Button(SeriesWords.say("page.report"));
    report.getStyleClass().add("next");
    report.setDisable(!open);
    report.setOnAction(
        e -> dialogs.folder(SeriesWords.say("page.report")).ifPresent(model::report));
    Label notice = words("", "strong");
    notice.textProperty().bind(model.noticeProperty());
    FlowPane row = Fields.row(report, notice);
    if (!view.next().isEmpty()) {
      Button next = new Button(view.next());
      next.setId("series-next");
      next.setOnAction(e -> model.planNext());
      row.getChildren().add(0, next);
    }
    VBox box = new VBox(12, row);
    if (view.mayEnd()) {
      box.getChildren().add(ending());
    }
    if (!open) {
      box.getChildren().add(words(SeriesWords.say("page.report.note"), "note", "second"));
    }
    box.getChildren()
        .add(
            new Caution(
                Words.of("report").say("caution"),
                Words.of("cautions").say("trust.series")
                    + " "
                    + Words.of("cautions").say("short")));
    return box;
  }
}

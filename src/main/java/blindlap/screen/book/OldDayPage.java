package blindlap.screen.book;

import static blindlap.screen.part.ReviewParts.lines;
import static blindlap.screen.part.ReviewParts.words;

import blindlap.screen.part.AnswerSentence;
import blindlap.screen.part.Caution;
import blindlap.screen.part.Dialogs;
import blindlap.screen.part.ErrorNote;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Lead;
import blindlap.screen.part.Look;
import blindlap.screen.part.MarginNote;
import blindlap.screen.part.PageGrid;
import blindlap.screen.part.RecordTable;
import blindlap.screen.part.RoomFrame;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** The room where old days are brought in: file, columns, preview, and only then taken. */
final class OldDayPage extends BorderPane {
  private static final Words WORDS = Words.of("oldday");
  private static final double[] CELLS = {32, 68};

  private final Look look;
  private final OldDayModel model;
  private final Dialogs dialogs;
  private final PageGrid page;
  private final RoomFrame frame;
  private final AnswerSentence answer;
  private final VBox columns = new VBox(10);
  private final OldDayMappingView mapping;
  private final VBox preview = new VBox(10);
  private final Button take = new Button();
  private final TextField file;

  OldDayPage(Look look, OldDayModel model, Dialogs dialogs, Runnable away) {
    this.look = look;
    this.model = model;
    this.dialogs = dialogs;
    this.page = new PageGrid(look);
    this.frame = new RoomFrame(page, away);
    this.answer = new AnswerSentence(look, WORDS.say("question"));
    this.mapping = new OldDayMappingView(look, model);
    VBox field =
        Fields.text(model.form().field("file"), WORDS.say("file"), WORDS.say("file.help"), 30);
    this.file = (TextField) field.getChildren().get(1);
    file.setOnAction(e -> model.read());
    build(field);
    setCenter(frame);
    model.foundProperty().addListener((o, before, now) -> found());
    model.previewProperty().addListener((o, before, now) -> preview(now));
    found();
    preview(model.previewProperty().get());
  }

  void enter() {
    frame.enter();
  }

  private void build(VBox field) {
    page.add(new VBox(16, answer, new Lead(WORDS.say("lead"))));
    Button read = new Button(WORDS.say("file.read"));
    read.setOnAction(e -> model.read());
    Button choose = new Button(WORDS.say("file.choose"));
    choose.setOnAction(e -> dialogs.openFile(WORDS.say("file.choose")).ifPresent(model::open));
    page.add(
        new VBox(10, h2("file.title"), field, new FlowPane(12, 8, choose, read), columns),
        new MarginNote(WORDS.say("file"), WORDS.say("file.note")));
    page.add(mapping, new MarginNote(WORDS.say("where.title"), WORDS.say("where.note")));
    take.getStyleClass().add("next");
    take.setOnAction(e -> model.take());
    Label notice = words("", "strong");
    notice.textProperty().bind(model.noticeProperty());
    notice.managedProperty().bind(notice.textProperty().isNotEmpty());
    page.add(
        new VBox(
            16,
            preview,
            take,
            notice,
            new Caution(
                Words.of("report").say("caution"), Words.of("cautions").say("trust.series"))));
  }

  private static Label h2(String key) {
    return words(WORDS.say(key), "h2");
  }

  private void found() {
    OldDayModel.Found found = model.foundProperty().get();
    columns.getChildren().clear();
    boolean any = !found.columns().isEmpty();
    columns.setManaged(any);
    mapping.setVisible(any);
    mapping.setManaged(any);
    if (!any) {
      return;
    }
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < found.columns().size(); i++) {
      rows.add(List.of(found.columns().get(i), String.join("   ", found.cells().get(i))));
    }
    columns
        .getChildren()
        .setAll(
            words(WORDS.say("columns"), "strong"),
            new RecordTable(
                look, CELLS, List.of(WORDS.say("th.column"), WORDS.say("th.cells")), rows));
    mapping.columns(found.columns());
  }

  private void preview(OldDayPreview now) {
    answer.say(now.headline().before(), now.headline().phrase(), now.headline().after());
    preview.getChildren().setAll(h2("preview"));
    boolean any = !model.foundProperty().get().columns().isEmpty();
    if (!any) {
      preview.getChildren().add(words(WORDS.say("preview.none"), "second"));
    }
    preview.getChildren().add(lines(now.taken()));
    if (!now.refused().isEmpty()) {
      List<String> rest = new ArrayList<>(now.refused().subList(1, now.refused().size()));
      rest.add(WORDS.say(now.whole() ? "refused.all" : "refused.note"));
      preview
          .getChildren()
          .addAll(words(WORDS.say("refused"), "strong"), new ErrorNote(now.refused().get(0), rest));
    }
    if (!now.rows().isEmpty()) {
      preview
          .getChildren()
          .addAll(
              words(WORDS.say("rows"), "strong"),
              new RecordTable(look, even(now.heads().size()), now.heads(), now.rows()));
      if (now.more() > 0) {
        preview.getChildren().add(words(WORDS.say("rows.more", now.more()), "note", "second"));
      }
    }
    take.setText(
        now.days() == 0
            ? WORDS.say("take.none")
            : WORDS.say(now.days() == 1 ? "take.day" : "take.days", now.days()));
    take.setDisable(now.days() == 0);
  }

  private static double[] even(int columns) {
    double[] shares = new double[columns];
    java.util.Arrays.fill(shares, 100.0 / columns);
    return shares;
  }
}

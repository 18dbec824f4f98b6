package blindlap.screen.book;

import static blindlap.screen.part.ReviewParts.lines;
import static blindlap.screen.part.ReviewParts.words;

import blindlap.screen.part.AnswerSentence;
import blindlap.screen.part.Caution;
import blindlap.screen.part.Dialogs;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Lead;
import blindlap.screen.part.ListedRow;
import blindlap.screen.part.Look;
import blindlap.screen.part.PageGrid;
import blindlap.screen.part.PlotView;
import blindlap.screen.part.RecordTable;
import blindlap.screen.part.RoomFrame;
import blindlap.screen.part.WholeChoice;
import blindlap.wording.FieldProfilesWords;
import blindlap.wording.FieldWords;
import blindlap.wording.ProfilesFoundWords;
import blindlap.wording.day.Words;
import java.util.List;
import java.util.stream.Stream;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** The room of fields: the answer, plot, what it hangs on, the table, pairs of others, days. */
final class FieldPage extends BorderPane {
  private static final double[] SHARES = {16, 16, 22, 28, 9, 9};
  private static final double[] PROFILES = {20, 20, 60};

  private final Look look;
  private final FieldModel model;
  private final Dialogs dialogs;
  private final PageGrid page;
  private final RoomFrame frame;

  FieldPage(Look look, FieldModel model, Dialogs dialogs, Runnable away) {
    this.look = look;
    this.model = model;
    this.dialogs = dialogs;
    this.page = new PageGrid(look);
    ComboBox<FieldModel.Choice> field = new WholeChoice<>(model.fields());
    field.valueProperty().bindBidirectional(model.chosenProperty());
    ComboBox<FieldModel.Reference> reference = new WholeChoice<>(model.references());
    reference.valueProperty().bindBidirectional(model.referenceProperty());
    this.frame =
        new RoomFrame(
            page,
            away,
            RoomFrame.choice(FieldWords.say("title"), field, FieldModel.Choice::words),
            RoomFrame.choice(
                FieldWords.say("page.reference"), reference, FieldModel.Reference::words));
    setCenter(frame);
    model.viewProperty().addListener((o, before, now) -> show(now));
    show(model.viewProperty().get());
  }

  void enter() {
    model.refresh();
    frame.enter();
  }

  private void show(FieldView view) {
    page.clear();
    AnswerSentence answer = new AnswerSentence(look, view.question());
    answer.say(view.headline().before(), view.headline().phrase(), view.headline().after());
    VBox head = new VBox(16, answer);
    view.lead().forEach(line -> head.getChildren().add(new Lead(line)));
    page.addWide(head);
    view.picture().ifPresent(drawing -> page.addWide(new PlotView(look, drawing)));
    cautions(view.cautions());
    if (!view.rows().isEmpty()) {
      page.addWide(new RecordTable(look, SHARES, heads(), view.rows()));
    }
    section("page.own", view.own());
    profiles(view.profiles());
    section("others.title", view.others());
    section("page.next", view.next());
    section("days.title", view.days());
    section("out.title", view.out());
    if (!view.days().isEmpty()) {
      page.add(report());
    }
    page.add(
        new Caution(
            Words.of("report").say("caution"),
            Words.of("cautions").say("trust.field") + " " + Words.of("cautions").say("short")));
  }

  private FlowPane report() {
    Button report = new Button(FieldWords.say("page.report"));
    report.setId("field-report");
    report.setOnAction(e -> dialogs.folder(FieldWords.say("page.report")).ifPresent(model::report));
    Label notice = words("", "strong");
    notice.textProperty().bind(model.noticeProperty());
    return Fields.row(report, notice);
  }

  /** Always in view: there is nothing to fold it away with. */
  private void cautions(List<String> cautions) {
    if (!cautions.isEmpty()) {
      page.addWide(
          new Caution(cautions.get(0), String.join(" ", cautions.subList(1, cautions.size()))));
    }
  }

  private void profiles(List<ProfilesFoundWords.Row> profiles) {
    if (!profiles.isEmpty()) {
      List<ListedRow> rows =
          profiles.stream()
              .map(row -> new ListedRow(row.name(), row.mark(), row.measures(), row.sentences()))
              .toList();
      page.addWide(
          new VBox(
              10,
              words(ProfilesFoundWords.title(), "h2"),
              new RecordTable(ProfilesFoundWords.heads(), look, PROFILES, rows),
              words(FieldProfilesWords.note(), "note", "second")));
    }
  }

  private static List<String> heads() {
    return Stream.of("setup", "together", "interval", "ridden", "price", "mass")
        .map(head -> FieldWords.say("page.th." + head))
        .toList();
  }

  private static Label h2(String key) {
    return words(FieldWords.say(key), "h2");
  }

  private void section(String key, List<String> texts) {
    if (!texts.isEmpty()) {
      page.addWide(new VBox(10, h2(key), lines(texts)));
    }
  }
}

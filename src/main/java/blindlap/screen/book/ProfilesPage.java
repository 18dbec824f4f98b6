package blindlap.screen.book;

import static blindlap.screen.part.ReviewParts.lines;
import static blindlap.screen.part.ReviewParts.words;

import blindlap.screen.part.AnswerSentence;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Fold;
import blindlap.screen.part.Lead;
import blindlap.screen.part.Look;
import blindlap.screen.part.MarginNote;
import blindlap.screen.part.PageGrid;
import blindlap.screen.part.RoomFrame;
import blindlap.wording.ProfileWords;
import javafx.beans.property.StringProperty;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.VBox;

/** The room of profiles: what is kept, and two fields to make or change one. */
final class ProfilesPage extends BorderPane {
  private static final double GAP = 10;
  private static final int NAME_COLUMNS = 18;
  private static final int MEASURES_COLUMNS = 30;

  private final ProfilesModel model;
  private final RoomFrame frame;
  private final AnswerSentence answer;
  private final VBox list = new VBox(GAP);
  private final TextField name;

  ProfilesPage(Look look, ProfilesModel model, Runnable away) {
    this.model = model;
    this.answer = new AnswerSentence(look, ProfileWords.say("page.question"));
    this.name = field("profile-name", "page.name", model.nameProperty(), NAME_COLUMNS);
    PageGrid page = new PageGrid(look);
    page.add(
        new VBox(16, answer, new Lead(ProfileWords.say("page.lead"))),
        new MarginNote(ProfileWords.say("page.when"), ProfileWords.say("page.when.note")));
    page.add(form());
    page.add(list);
    this.frame = new RoomFrame(page, away);
    setCenter(frame);
    model.keptProperty().addListener((o, before, now) -> show(now));
    show(model.keptProperty().get());
  }

  void enter() {
    model.refresh();
    frame.enter();
  }

  /** Made once, so that what is half typed and the focus stay while the list is made anew. */
  private VBox form() {
    TextField measures =
        field("profile-measures", "page.measures", model.measuresProperty(), MEASURES_COLUMNS);
    Button keep = Fields.button(ProfileWords.say("page.keep"), model::keep);
    keep.setId("profile-keep");
    keep.getStyleClass().add("next");
    name.setOnAction(e -> model.keep());
    measures.setOnAction(e -> model.keep());
    Label said = words("", "strong");
    said.setId("profile-said");
    said.textProperty().bind(model.saidProperty());
    said.managedProperty().bind(said.textProperty().isNotEmpty());
    return new VBox(
        GAP,
        words(ProfileWords.say("page.make"), "h2"),
        Fields.row(labelled("page.name", name), labelled("page.measures", measures)),
        words(ProfileWords.say("page.help"), "note", "second"),
        Fields.row(keep),
        said);
  }

  private static TextField field(String id, String key, StringProperty typed, int columns) {
    TextField field = new TextField();
    field.setId(id);
    field.setPrefColumnCount(columns);
    field.setPromptText(ProfileWords.say(key + ".example"));
    field.setAccessibleText(ProfileWords.say(key));
    field.textProperty().bindBidirectional(typed);
    return field;
  }

  private static VBox labelled(String key, TextField field) {
    Label label = words(ProfileWords.say(key), "note");
    label.setLabelFor(field);
    return new VBox(5, label, field);
  }

  private void show(ProfilesModel.Kept kept) {
    int profiles = kept.profiles().size();
    answer.say(
        profiles == 0
            ? ProfileWords.say("page.answer.none")
            : ProfileWords.say("page.answer", profiles),
        "",
        "");
    boolean held = list.lookupAll(".button").stream().anyMatch(button -> button.isFocused());
    list.getChildren().clear();
    if (profiles > 0) {
      list.getChildren().add(words(ProfileWords.say("page.kept"), "h2"));
    }
    kept.profiles().forEach(row -> list.getChildren().add(row(row)));
    ProfileWords.damaged(kept.damaged())
        .forEach(line -> list.getChildren().add(words(line, "strong")));
    if (!kept.earlier().isEmpty()) {
      list.getChildren().add(new Fold(ProfileWords.say("page.earlier"), lines(kept.earlier())));
    }
    if (held) {
      // The button that was pressed is gone with its row.
      name.requestFocus();
    }
  }

  private VBox row(ProfilesModel.Row row) {
    Button change =
        Fields.button(
            ProfileWords.say("page.change"),
            () -> {
              model.change(row);
              name.requestFocus();
            });
    change.setAccessibleText(ProfileWords.say("page.change.of", row.name()));
    Button remove = Fields.button(ProfileWords.say("page.remove"), () -> model.remove(row));
    remove.setAccessibleText(ProfileWords.say("page.remove.of", row.name()));
    change.getStyleClass().add("quiet");
    remove.getStyleClass().add("quiet");
    VBox box =
        new VBox(
            4,
            words(row.name(), "strong"),
            words(row.measures()),
            words(row.version(), "note", "second"),
            Fields.row(change, remove));
    box.getStyleClass().add("record-row");
    return box;
  }
}

package blindlap.screen.plan;

import blindlap.screen.part.Dialogs;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Shell;
import blindlap.screen.part.SteadyBox;
import blindlap.wording.PlanWords;
import javafx.beans.binding.Bindings;
import javafx.collections.ListChangeListener;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Drafts that are kept, and plan files in and out: what is needed now and then, at one touch. */
final class PlanDraftsView extends SteadyBox {
  private final PlanModel model;

  PlanDraftsView(PlanModel model, Dialogs dialogs) {
    super(8);
    this.model = model;
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
    Button copy = Fields.button(PlanWords.say("draft.copy"), model.copies()::startFromOpenSession);
    copy.disableProperty().bind(model.copies().sessionOpenProperty().not());
    FlowPane row =
        Fields.row(
            list(),
            begin("draft.new", Shell.Beginning.COMPARISON),
            begin("draft.telling", Shell.Beginning.TELLING_RUN),
            copy,
            read,
            write,
            Fields.button(PlanWords.say("draft.forget"), model::delete));
    row.getChildren().forEach(node -> node.getStyleClass().add("quiet"));
    getChildren().setAll(asked(), PlanFieldsView.fold("head.drafts", row), back());
  }

  private Button begin(String key, Shell.Beginning as) {
    Button button = Fields.button(PlanWords.say(key), () -> model.start(as));
    button.setId(key.replace('.', '-'));
    return button;
  }

  /** What is asked of a copy of a plan of a series that is under way. */
  private VBox asked() {
    Label question = Fields.words("", "strong");
    question.textProperty().bind(model.copies().questionProperty());
    VBox box =
        new VBox(
            8,
            question,
            Fields.row(
                Fields.button(PlanWords.say("series.keep"), model.copies()::keepInSeries),
                Fields.button(PlanWords.say("series.outside"), model.copies()::planOutside)));
    box.setId("series-asked");
    box.visibleProperty().bind(question.textProperty().isNotEmpty());
    box.managedProperty().bind(box.visibleProperty());
    return box;
  }

  /** Filled when it is opened: the list changes by itself while drafts are kept. */
  private ComboBox<PlanDrafts.Draft> list() {
    ComboBox<PlanDrafts.Draft> list = new ComboBox<>();
    list.setPromptText(PlanWords.say("drafts"));
    list.setAccessibleText(PlanWords.say("drafts"));
    list.setId("drafts");
    list.setButtonCell(new Titled());
    list.setOnShowing(e -> list.getItems().setAll(model.drafts()));
    list.setOnHidden(
        e -> {
          PlanDrafts.Draft chosen = list.getValue();
          if (chosen != null) {
            list.setValue(null);
            model.open(chosen);
          }
        });
    return list;
  }

  /** A draft that was deleted stays at hand. */
  private Button back() {
    Button back = Fields.button("", model::bringBack);
    back.setId("bring-back");
    back.getStyleClass().add("quiet");
    back.setMinHeight(Region.USE_PREF_SIZE);
    back.visibleProperty().bind(Bindings.isNotEmpty(model.deleted()));
    back.managedProperty().bind(back.visibleProperty());
    model
        .deleted()
        .addListener(
            (ListChangeListener<PlanDrafts.Deleted>)
                change ->
                    back.setText(
                        model.deleted().isEmpty()
                            ? ""
                            : PlanWords.say("draft.back", model.deleted().get(0).title())));
    return back;
  }

  /** A long title takes the lines it needs. */
  private static final class Titled extends ListCell<PlanDrafts.Draft> {
    Titled() {
      setWrapText(true);
    }

    @Override
    protected void updateItem(PlanDrafts.Draft draft, boolean empty) {
      super.updateItem(draft, empty);
      setText(empty || draft == null ? PlanWords.say("drafts") : draft.title());
    }
  }
}

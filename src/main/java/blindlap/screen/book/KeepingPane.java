package blindlap.screen.book;

import blindlap.screen.part.Dialogs;
import blindlap.wording.KeepingWords;
import java.nio.file.Path;
import java.util.List;
import javafx.beans.value.ObservableObjectValue;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** Bringing in and saving sessions, backing up, and the line that says what came of it. */
final class KeepingPane extends VBox {
  private final KeepingModel model;
  private final Dialogs dialogs;
  private final ObservableObjectValue<NotebookModel.@Nullable Row> chosen;

  /**
   * @param chosen the session that is saved: the chosen one, else the one in hand; null for none
   */
  KeepingPane(
      KeepingModel model,
      Dialogs dialogs,
      ObservableObjectValue<NotebookModel.@Nullable Row> chosen) {
    super(10);
    this.model = model;
    this.dialogs = dialogs;
    this.chosen = chosen;
    Hyperlink bring = link("bring", this::bringIn);
    Hyperlink save = link("save", this::save);
    Hyperlink backup = link("backup", model::backUp);
    Hyperlink check = link("check", model::check);
    Hyperlink recover = link("trouble.recover", this::recover);
    bring.disableProperty().bind(model.workingProperty());
    backup.disableProperty().bind(model.workingProperty());
    check.disableProperty().bind(model.workingProperty());
    recover.disableProperty().bind(model.workingProperty());
    recover.visibleProperty().bind(model.unsoundProperty());
    recover.managedProperty().bind(model.unsoundProperty());
    save.disableProperty()
        .bind(javafx.beans.binding.Bindings.isNull(chosen).or(model.workingProperty()));
    Label said = new Label();
    said.getStyleClass().add("note");
    said.setWrapText(true);
    said.setMinHeight(USE_PREF_SIZE);
    said.setAccessibleRole(AccessibleRole.TEXT);
    said.textProperty().bind(model.saidProperty());
    said.managedProperty().bind(said.textProperty().isNotEmpty());
    FlowPane row = new FlowPane(bring, save, backup, check, recover);
    row.getStyleClass().add("doors");
    getChildren().setAll(row, said);
  }

  /** Quiet, as the doors to the rooms are: none of it is done every day. */
  private static Hyperlink link(String key, Runnable work) {
    Hyperlink link = new Hyperlink(KeepingWords.say(key));
    link.setOnAction(
        e -> {
          link.setVisited(false);
          work.run();
        });
    return link;
  }

  private void bringIn() {
    List<Path> files = dialogs.openFiles(KeepingWords.say("bring.title"));
    if (!files.isEmpty()) {
      model.bringIn(files);
    }
  }

  private void recover() {
    dialogs
        .saveFile(KeepingWords.say("trouble.recover.title"), model.suggested())
        .ifPresent(model::recover);
  }

  private void save() {
    NotebookModel.Row row = chosen.get();
    if (row != null) {
      dialogs
          .saveFile(KeepingWords.say("save.title", row.title()), KeepingModel.fileName(row))
          .ifPresent(file -> model.save(row, file));
    }
  }
}

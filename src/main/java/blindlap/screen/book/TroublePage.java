package blindlap.screen.book;

import blindlap.screen.part.AnswerSentence;
import blindlap.screen.part.Dialogs;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.PageGrid;
import blindlap.wording.KeepingWords;
import java.util.List;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** All that the window shows if its notebook cannot be opened. */
public final class TroublePage extends VBox {
  private final TroubleModel model;
  private final Dialogs dialogs;

  /**
   * @param dialogs ask where the new notebook goes
   * @param close closes the window
   */
  public TroublePage(Look look, TroubleModel model, Dialogs dialogs, Runnable close) {
    this.model = model;
    this.dialogs = dialogs;
    AnswerSentence answer = new AnswerSentence(look, KeepingWords.say("trouble.question"));
    answer.say(
        KeepingWords.say("trouble.before"),
        KeepingWords.say("trouble.marked"),
        KeepingWords.say("trouble.after"));
    Label why = Fields.words("", "strong");
    why.textProperty().bind(model.sentenceProperty());
    Button save = Fields.button(KeepingWords.say("trouble.recover"), this::recover);
    save.getStyleClass().add("next");
    save.disableProperty().bind(model.workingProperty());
    shownWhile(save, model.damagedProperty().and(model.freshProperty().isNull()));
    Button open = Fields.button(KeepingWords.say("trouble.open"), model::openFresh);
    open.getStyleClass().add("next");
    shownWhile(open, model.freshProperty().isNotNull());
    open.visibleProperty().addListener((o, before, now) -> open.requestFocus());
    Button again = Fields.button(KeepingWords.say("trouble.again"), model::tryAgain);
    again.disableProperty().bind(model.workingProperty());
    Button end = Fields.button(KeepingWords.say("trouble.close"), close);
    Label said = Fields.words("");
    said.setAccessibleRole(AccessibleRole.TEXT);
    said.textProperty().bind(model.saidProperty());
    shownWhile(said, model.saidProperty().isNotEmpty());
    VBox column =
        new VBox(20, answer, why, new FlowPane(12, 12, save, open, again, end), said, backups());
    column.maxWidthProperty().bind(look.px(744));
    PageGrid grid = new PageGrid(look);
    grid.add(column);
    VBox.setVgrow(grid, javafx.scene.layout.Priority.ALWAYS);
    getChildren().setAll(grid);
  }

  private VBox backups() {
    List<String> lines = model.backups();
    VBox box = new VBox(6);
    if (!lines.isEmpty()) {
      Label title = Fields.words(KeepingWords.say("trouble.backups"), "h2");
      box.getChildren().add(title);
      lines.forEach(line -> box.getChildren().add(Fields.words(line, "second")));
      box.getChildren().add(Fields.words(KeepingWords.say("trouble.backups.how"), "second"));
    }
    shownWhile(
        box,
        model.damagedProperty().and(javafx.beans.binding.Bindings.isNotEmpty(box.getChildren())));
    return box;
  }

  private static void shownWhile(Node node, javafx.beans.value.ObservableBooleanValue shown) {
    node.visibleProperty().bind(shown);
    node.managedProperty().bind(shown);
  }

  private void recover() {
    dialogs
        .saveFile(KeepingWords.say("trouble.recover.title"), model.suggested())
        .ifPresent(model::recover);
  }
}

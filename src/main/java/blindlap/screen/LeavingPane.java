package blindlap.screen;

import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.wording.NotebookWords;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.DoubleBinding;
import javafx.geometry.Insets;
import javafx.scene.control.Button;
import javafx.scene.layout.VBox;

/** Asks above the page whether it may be left. Staying has the focus. */
final class LeavingPane extends VBox {
  private final Button stay;

  LeavingPane(Look look, Shell shell, Shell.Question question) {
    super(10);
    setId("leaving");
    DoubleBinding inset = look.px(14);
    paddingProperty().bind(Bindings.createObjectBinding(() -> new Insets(inset.get()), inset));
    stay = Fields.button(NotebookWords.say("leave.stay"), shell::stay);
    stay.setId("leave-stay");
    stay.getStyleClass().add("next");
    getChildren().add(Fields.words(question.words(), "strong"));
    if (question.leave().isEmpty()) {
      getChildren().add(Fields.row(stay));
      return;
    }
    Button leave = Fields.button(question.leave(), shell::leave);
    leave.setId("leave-go");
    getChildren().add(Fields.row(stay, leave));
  }

  /** Takes the focus, so that a hasty key stays. */
  void focus() {
    stay.requestFocus();
  }
}

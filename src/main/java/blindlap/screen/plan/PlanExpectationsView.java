package blindlap.screen.plan;

import blindlap.screen.part.Fields;
import blindlap.screen.part.SteadyBox;
import blindlap.screen.part.TypedForm;
import blindlap.wording.PlanWords;
import java.util.List;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextArea;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;

/** What tester, rider and helper expect: each is hidden but while it is being written. */
final class PlanExpectationsView extends SteadyBox {
  PlanExpectationsView(PlanModel model) {
    super(12);
    for (String who : List.of("tester", "rider", "helper")) {
      getChildren().add(one(who, model.form().part("expectations").field(who)));
    }
  }

  private static VBox one(String who, TypedForm.Entry entry) {
    Label state = Fields.words("", "second");
    Button write = new Button(PlanWords.say("expectation.write"));
    write.setAccessibleText(PlanWords.say("expectation.write") + ": " + PlanWords.field(who));
    VBox box = new VBox(6);
    Label title = Fields.words(PlanWords.field(who), "note");
    HBox closed = new HBox(12, write, state);
    Runnable close =
        () -> {
          int length = entry.get().length();
          state.setText(length == 0 ? "" : PlanWords.say("expectation.hidden", length));
          box.getChildren().setAll(title, closed);
        };
    write.setOnAction(e -> open(entry, who, box, title, close));
    entry
        .textProperty()
        .addListener(
            (o, before, now) -> {
              if (box.getChildren().contains(closed)) {
                close.run();
              }
            });
    close.run();
    return box;
  }

  private static void open(
      TypedForm.Entry entry, String who, VBox box, Label title, Runnable close) {
    VBox field = Fields.area(entry, PlanWords.field(who), "");
    TextArea area = (TextArea) field.getChildren().get(1);
    Button hide = Fields.button(PlanWords.say("expectation.hide"), close);
    area.focusedProperty()
        .addListener(
            (o, was, now) -> {
              if (!now && !hide.isFocused() && area.getScene() != null) {
                close.run();
              }
            });
    box.getChildren().setAll(title, area, hide);
    area.requestFocus();
  }
}

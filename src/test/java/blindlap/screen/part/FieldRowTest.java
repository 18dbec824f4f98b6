package blindlap.screen.part;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.screen.Window;
import java.time.LocalDate;
import java.util.Map;
import javafx.scene.Scene;
import javafx.scene.control.DatePicker;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class FieldRowTest {
  private final TypedForm form = new TypedForm(() -> {});

  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
  }

  private VBox field(String name) {
    return Fields.text(form.field(name), "Field " + name, "", 4);
  }

  private void wrong(String name, String why) {
    form.tell("", new java.util.HashMap<>(Map.of(name, why)));
  }

  @Test
  void whatIsWrongStandsUnderTheRowAsWideAsTheColumnAndMovesNoField() {
    Window.run(
        () -> {
          FlowPane row = Fields.row(field("a"), field("b"));
          row.getChildren().add(field("c"));
          Scene scene = new Scene(new VBox(row), 640, 400);
          new Look().dress(scene);
          layout(scene);
          double c = row.getChildren().get(2).getLayoutX();
          wrong("b", "Found \"x\", but this field takes a number.");
          layout(scene);
          layout(scene);

          Label said = said(row);
          assertThat(said.getText())
              .isEqualTo("Field b: Found \"x\", but this field takes a number.");
          assertThat(said.getWidth()).isEqualTo(640);
          assertThat(said.getHeight()).isLessThan(40);
          assertThat(row.getChildren().get(2).getLayoutX()).isEqualTo(c);
          assertThat(said.localToScene(0, 0).getX()).isZero();
          assertThat(said.localToScene(0, 0).getY())
              .isGreaterThanOrEqualTo(
                  row.getChildren().get(2).localToScene(0, 0).getY()
                      + ((VBox) row.getChildren().get(2)).getHeight());
          assertThat(row.getHeight())
              .isGreaterThanOrEqualTo(said.localToScene(0, said.getHeight()).getY());

          double y = said.localToScene(0, 0).getY();
          for (int again = 0; again < 3; again++) {
            row.requestLayout();
            layout(scene);
          }
          assertThat(said.localToScene(0, 0).getY()).isEqualTo(y);

          wrong("a", "");
          layout(scene);
          assertThat(row.getHeight()).isLessThan(said.localToScene(0, said.getHeight()).getY());
        });
  }

  private static Label said(FlowPane row) {
    return row.lookupAll(".field-error").stream()
        .map(Label.class::cast)
        .filter(Label::isVisible)
        .findFirst()
        .orElseThrow();
  }

  private static void layout(Scene scene) {
    scene.getRoot().applyCss();
    scene.getRoot().layout();
  }

  @Test
  void aCalendarWritesADateAndChangesNothingThatIsTyped() {
    Window.run(
        () -> {
          TypedForm.Entry day = form.field("day");
          day.set("the day after");
          VBox box = DateField.of(day, "Day", "");
          Scene scene = new Scene(box);
          layout(scene);
          DatePicker calendar = (DatePicker) scene.getRoot().lookup(".calendar");
          calendar.getOnShowing().handle(null);
          assertThat(day.get()).isEqualTo("the day after");

          calendar.setValue(LocalDate.of(2026, 11, 14));
          assertThat(day.get()).isEqualTo("2026-11-14");
          day.set("2026-11-");
          calendar.getOnShowing().handle(null);
          assertThat(calendar.getValue()).isNull();
          assertThat(day.get()).isEqualTo("2026-11-");
        });
  }
}

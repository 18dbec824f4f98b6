package blindlap.screen.trail;

import blindlap.desk.TrailDraft;
import blindlap.wording.TrailWords;
import java.util.ArrayList;
import java.util.List;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.VBox;

/**
 * The gates, a line each: the one in hand is marked, arrow keys move it or go to the next one. A
 * line stays the same node while its gate changes, so that the focus stays where it is.
 */
final class TrailGatesView extends VBox {
  private static final double STEP = 1;
  private static final double SMALL_STEP = 0.1;

  private final TrailModel model;
  private final List<ToggleButton> lines = new ArrayList<>();

  TrailGatesView(TrailModel model) {
    this.model = model;
    getStyleClass().add("gate-lines");
    model.hand().sightProperty().addListener((o, before, now) -> show(now));
    show(model.hand().sightProperty().get());
  }

  private void show(TrailSight now) {
    List<TrailDraft.Across> gates = now.draft().map(TrailDraft::gates).orElse(List.of());
    while (lines.size() < gates.size()) {
      lines.add(line(lines.size()));
    }
    for (int i = 0; i < gates.size(); i++) {
      TrailDraft.Across gate = gates.get(i);
      String role = TrailWords.role(i, gates.size());
      String metres = TrailWords.metres(gate.along());
      ToggleButton line = lines.get(i);
      line.setText(TrailWords.say("page.gate.line", gate.name(), role, metres));
      line.setAccessibleText(
          TrailWords.say(
              "page.gate.spoken", role, gate.name(), metres, TrailWords.metres(gate.width())));
      line.setSelected(i == now.chosen());
      // One stop for Tab: going on to the fields leaves the gate in hand as it is.
      line.setFocusTraversable(i == Math.max(0, now.chosen()));
    }
    boolean focused = lines.stream().anyMatch(ToggleButton::isFocused);
    if (getChildren().size() != gates.size()) {
      getChildren().setAll(lines.subList(0, gates.size()));
    }
    if (focused && now.chosen() >= 0 && !lines.get(now.chosen()).isFocused()) {
      lines.get(now.chosen()).requestFocus();
    }
  }

  /** The gate in hand gets the focus: after a press on the drawing the arrow keys move it. */
  void focus() {
    int chosen = model.hand().sightProperty().get().chosen();
    if (chosen >= 0 && chosen < getChildren().size()) {
      lines.get(chosen).requestFocus();
    }
  }

  private ToggleButton line(int number) {
    ToggleButton line = new ToggleButton();
    line.getStyleClass().add("gate-line");
    line.setMaxWidth(Double.MAX_VALUE);
    line.setWrapText(true);
    line.setMinHeight(USE_PREF_SIZE);
    line.setOnAction(
        e -> {
          line.setSelected(true);
          model.hand().choose(number);
        });
    line.focusedProperty()
        .addListener(
            (o, before, now) -> {
              if (now) {
                model.hand().choose(number);
              }
            });
    line.addEventFilter(KeyEvent.KEY_PRESSED, this::key);
    return line;
  }

  private void key(KeyEvent e) {
    double step = e.isShiftDown() ? SMALL_STEP : STEP;
    int chosen = model.hand().sightProperty().get().chosen();
    KeyCode code = e.getCode();
    if (code == KeyCode.LEFT) {
      model.hand().move(-step);
    } else if (code == KeyCode.RIGHT) {
      model.hand().move(step);
    } else if (code == KeyCode.DELETE) {
      model.hand().remove();
    } else if (code == KeyCode.UP && chosen > 0) {
      lines.get(chosen - 1).requestFocus();
    } else if (code == KeyCode.DOWN && chosen + 1 < getChildren().size()) {
      lines.get(chosen + 1).requestFocus();
    } else {
      return;
    }
    e.consume();
  }
}

package blindlap.screen.ride;

import blindlap.ride.RideSheet;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.Look;
import blindlap.screen.part.SavedLine;
import blindlap.session.day.LapId;
import blindlap.wording.day.RideWords;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import javafx.geometry.Pos;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/**
 * Below the page, always in view: what is saved, the last answer to take back, and that the lap is
 * ridden or done. What is open then is asked about in the words' place, once.
 */
final class RideFootView extends StackPane {
  private final Look look;
  private final RideModel model;
  private final Deaf deaf;
  private final VBox status = new VBox(4);
  private final Label trouble = new Label();
  private final Label question = new Label();
  private final Button takeBack = new Button();
  private final Button asItIs = button("done.as.it.is");
  private final Button back = button("done.back");
  private Runnable arrange = () -> {};

  RideFootView(Look look, RideModel model, Deaf deaf) {
    this.look = look;
    this.model = model;
    this.deaf = deaf;
    getStyleClass().add("foot");
    status();
    question.getStyleClass().add("strong");
    question.setWrapText(true);
    question.setFocusTraversable(true);
    question.setMinHeight(USE_PREF_SIZE); // what is open is never cut off
    question.setMaxWidth(Double.MAX_VALUE);
    question.textProperty().bind(model.questionProperty());
    asItIs.setOnAction(e -> deaf.hear(model.done()::asItIs));
    back.setOnAction(e -> deaf.hear(model.done()::withdraw));
    takeBack.minHeightProperty().bind(look.touch());
    takeBack.setWrapText(true);
    takeBack.setOnAction(e -> takeBack());
    model.lastAnswerProperty().addListener((o, before, now) -> offer(now));
    model.questionProperty().addListener((o, before, now) -> asked(before, now));
    offer(model.lastAnswerProperty().get());
  }

  private Button button(String key) {
    Button button = new Button(RideWords.say(key));
    button.setMinWidth(USE_PREF_SIZE);
    return button;
  }

  /**
   * Takes the last answer back, and is deaf for a moment: the answer before it stands at the same
   * place now, and a key that is held repeats. The focus stays, or goes to words that no key
   * presses.
   */
  void takeBack() {
    deaf.hear(this::takeOneBack);
  }

  private void takeOneBack() {
    model.undo().takeBack();
    deaf.begin();
    if (model.lastAnswerProperty().get().isEmpty() && takeBack.isFocused()) {
      status.requestFocus();
    }
  }

  private void offer(String last) {
    if (last.isEmpty() && takeBack.isFocused()) {
      status.requestFocus(); // before the button goes: else the next one would have the focus
    }
    takeBack.setText(RideWords.say("take.back", last));
    takeBack.setAccessibleText(RideWords.say("take.back", last));
    takeBack.setVisible(!last.isEmpty());
    takeBack.setManaged(!last.isEmpty());
  }

  private void asked(String before, String now) {
    if (before.isEmpty() != now.isEmpty()) {
      deaf.begin();
      arrange.run();
      if (now.isEmpty()) {
        status.requestFocus();
      } else {
        question.requestFocus();
      }
    }
  }

  private void status() {
    SavedLine saved = new SavedLine();
    Runnable say = () -> saved.say(model.savedProperty().get(), model.openProperty().get());
    model.savedProperty().addListener((o, a, b) -> say.run());
    model.openProperty().addListener((o, a, b) -> say.run());
    say.run();
    trouble.setWrapText(true);
    trouble.setMinHeight(USE_PREF_SIZE);
    trouble.getStyleClass().add("strong");
    trouble.textProperty().bind(model.troubleProperty());
    trouble.managedProperty().bind(trouble.textProperty().isNotEmpty());
    trouble.visibleProperty().bind(trouble.managedProperty());
    status.getChildren().setAll(saved);
    status.setAlignment(Pos.CENTER_LEFT);
    status.getStyleClass().add("status");
    status.accessibleTextProperty().bind(model.savedProperty());
  }

  /**
   * Shows what belongs to a stage.
   *
   * @param whole false while the page speaks of something else: only what is saved stays
   */
  void show(RideSheet now, boolean whole) {
    Supplier<List<Node>> steps = () -> whole ? steps(now) : List.of();
    arrange = () -> arrange(whole, steps.get());
    arrange.run();
  }

  private List<Node> steps(RideSheet now) {
    return switch (now.stage()) {
      case WARM_UP -> List.of(step(RideWords.say("warm.up.button"), model::warmUpRidden, true));
      case SETTLING -> List.of(step(RideWords.say("settling.button"), model::lapDone, true));
      case SCORED ->
          List.of(step(RideWords.say("done.button", name(now)), () -> model.done().press(), false));
      case HAND_OVER, DONE, NO_SESSION, CAP, ALL_RIDDEN, OVER -> List.of(); // not below the page
    };
  }

  private String name(RideSheet now) {
    LapId lap = now.lap();
    return lap == null ? "" : model.lapName(lap);
  }

  private Button step(String words, Runnable action, boolean byEnter) {
    Button button = new Button(words);
    button.getStyleClass().add("next");
    button.minHeightProperty().bind(look.touch());
    button.setMinWidth(USE_PREF_SIZE);
    button.setDefaultButton(byEnter);
    button.setOnAction(e -> deaf.hear(action));
    return button;
  }

  private void arrange(boolean whole, List<Node> steps) {
    status.getChildren().remove(trouble);
    boolean asks = whole && !steps.isEmpty() && !model.questionProperty().get().isEmpty();
    Node words = asks ? question : status;
    List<Node> parts = new ArrayList<>();
    if (look.stacked()) {
      parts.addAll(steps); // first, so that nothing moves it when something comes beside it
    }
    if (asks) {
      parts.addAll(List.of(asItIs, back));
    } else if (whole) {
      parts.add(takeBack);
    }
    if (look.stacked()) {
      stack(parts, asks);
      return;
    }
    status.getChildren().add(trouble);
    HBox.setHgrow(words, Priority.ALWAYS);
    HBox row = new HBox(16, words);
    row.getChildren().addAll(parts);
    row.getChildren().addAll(steps);
    row.setAlignment(Pos.CENTER_LEFT);
    getChildren().setAll(row);
  }

  /** With large text every line of the foot is one less of the page: words stand beside buttons. */
  private void stack(List<Node> parts, boolean asks) {
    FlowPane row = new FlowPane(24, 12);
    row.setRowValignment(VPos.CENTER);
    row.getChildren().setAll(parts);
    if (asks) {
      getChildren().setAll(new VBox(12, question, row));
      return;
    }
    row.getChildren().add(status);
    getChildren().setAll(new VBox(12, trouble, row));
  }
}

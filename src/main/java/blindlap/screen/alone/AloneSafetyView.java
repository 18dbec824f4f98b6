package blindlap.screen.alone;

import blindlap.screen.part.ChoiceRow;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.SafetyTicks;
import blindlap.screen.part.WholeInView;
import blindlap.wording.AloneWords;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.TextField;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** The rider's own safety list; of a prepared unit first whether its cover and seal are whole. */
final class AloneSafetyView extends VBox {
  private static final double HIGH = 38;

  private final Look look;
  private final AloneModel model;
  private final Runnable next;
  private final SafetyTicks ticks;
  private @Nullable Asked fit;
  private @Nullable Asked cover;
  private final TextField seen = new TextField();

  /** A question with yes and no. */
  private record Asked(ChoiceRow<Boolean> row, boolean[] answered) {
    boolean open() {
      return !answered[0];
    }

    Node first() {
      return row.lookup(".toggle-button");
    }
  }

  /**
   * @param next goes on to what is needed next
   */
  AloneSafetyView(Look look, AloneModel model, AloneSheet now, Runnable next) {
    super(1);
    this.look = look;
    this.model = model;
    this.next = next;
    this.ticks = new SafetyTicks(look, HIGH, model::confirm, next);
    if (now.prepared()) {
      cover();
    }
    getChildren().add(Fields.words(AloneWords.say("safe"), "h2"));
    now.checks().forEach(check -> getChildren().add(ticks.add(check)));
    if (now.fitAsked()) {
      Asked asked = asked("fit", model::fit);
      fit = asked;
      getChildren().add(asked.row());
    }
    show(now);
  }

  private void cover() {
    Asked asked = asked("unit.whole", model::whole);
    cover = asked;
    seen.setPromptText(AloneWords.say("unit.words"));
    seen.setAccessibleText(AloneWords.say("unit.words"));
    seen.minHeightProperty().bind(look.touch(46));
    seen.textProperty().addListener((o, before, now) -> model.seen(now));
    seen.setOnAction(e -> next.run());
    seen.managedProperty().bind(seen.visibleProperty());
    getChildren().add(WholeInView.together(new VBox(6, asked.row(), seen)));
  }

  private Asked asked(String key, java.util.function.Consumer<Boolean> answer) {
    boolean[] answered = new boolean[1];
    ChoiceRow<Boolean> row =
        new ChoiceRow<>(
            look,
            AloneWords.say(key),
            List.of(
                new ChoiceRow.Option<>(true, AloneWords.say("yes")),
                new ChoiceRow.Option<>(false, AloneWords.say("no"))),
            2,
            yes -> {
              answered[0] = true;
              answer.accept(yes);
              next.run();
            });
    row.setSpacing(2);
    row.atLeast(look.touch(46));
    return new Asked(row, answered);
  }

  /** Does what a letter stands for; false if it stands for nothing. */
  boolean key(String letter) {
    return ticks.key(letter);
  }

  /** Shows what is confirmed and answered. */
  void show(AloneSheet now) {
    ticks.show(now.checks());
    show(fit, now.fit());
    show(cover, now.whole());
    seen.setVisible(Boolean.FALSE.equals(now.whole()));
  }

  private static void show(@Nullable Asked asked, @Nullable Boolean answer) {
    if (asked != null) {
      asked.row().show(answer);
      asked.answered()[0] = answer != null;
    }
  }

  /** The first tick or answer that is still open; empty if none is. */
  Optional<Node> open() {
    Asked unit = cover;
    if (unit != null && unit.open()) {
      return Optional.of(unit.first());
    }
    if (seen.isVisible() && seen.getScene() != null && seen.getText().isBlank()) {
      return Optional.of(seen);
    }
    Asked rider = fit;
    return ticks
        .open()
        .or(
            () ->
                rider != null && rider.open()
                    ? Optional.of(rider.first())
                    : Optional.<Node>empty());
  }
}

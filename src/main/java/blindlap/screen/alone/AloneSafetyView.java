package blindlap.screen.alone;

import blindlap.screen.part.ChoiceRow;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.SafetyTicks;
import blindlap.wording.AloneWords;
import blindlap.wording.day.SafetyRow;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.TextField;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** The rider's own safety list; of a prepared unit first whether its cover and seal are whole. */
final class AloneSafetyView extends VBox {
  private static final double HIGH = 38;
  private static final double GAP = 14;

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
   * @param columns ticks side by side, where there is width and no height
   * @param next goes on to what is needed next
   */
  AloneSafetyView(Look look, AloneModel model, AloneSheet now, int columns, Runnable next) {
    super(1);
    this.look = look;
    this.model = model;
    this.next = next;
    this.ticks = new SafetyTicks(look, HIGH, model::confirm, next);
    if (now.prepared()) {
      cover();
    }
    getChildren().add(Fields.words(AloneWords.say("safe"), "h2"));
    getChildren().add(list(now.checks(), columns));
    if (now.fitAsked()) {
      Asked asked = asked("fit", model::fit);
      fit = asked;
      getChildren().add(asked.row());
    }
    show(now);
  }

  private GridPane list(List<SafetyRow> checks, int columns) {
    GridPane grid = new GridPane();
    grid.setHgap(GAP);
    for (int i = 0; i < columns; i++) {
      ColumnConstraints column = new ColumnConstraints();
      column.setPercentWidth(100.0 / columns);
      grid.getColumnConstraints().add(column);
    }
    for (int i = 0; i < checks.size(); i++) {
      HBox line = ticks.add(checks.get(i));
      line.setMaxHeight(Double.MAX_VALUE); // the rules of one row stand at one height
      grid.add(line, i % columns, i / columns);
    }
    return grid;
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
  }

  /** Whether cover and seal of a unit are whole: asked first, and so above the list. */
  Node asked() {
    return Objects.requireNonNull(cover, "nobody covered it").row();
  }

  /** What could be seen where they are not, likewise. */
  Node seen() {
    return seen;
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

  /** What is open of a unit, which is looked at before anything else; empty if nothing is. */
  Optional<Node> openUnit() {
    Asked unit = cover;
    if (unit == null) {
      return Optional.empty();
    }
    if (unit.open()) {
      return Optional.of(unit.first());
    }
    return seen.isVisible() && seen.getText().isBlank() ? Optional.of(seen) : Optional.empty();
  }

  /** The first tick or answer that is still open; empty if none is. */
  Optional<Node> open() {
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

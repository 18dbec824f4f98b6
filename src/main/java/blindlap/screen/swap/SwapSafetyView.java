package blindlap.screen.swap;

import blindlap.screen.part.Caution;
import blindlap.screen.part.Look;
import blindlap.screen.part.SafetyTicks;
import blindlap.screen.part.WholeInView;
import blindlap.wording.SwapWords;
import blindlap.wording.day.SafetyRow;
import blindlap.wording.day.Words;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** The safety list, the same for real and dummy swaps, and whether the rider is fit to go on. */
final class SwapSafetyView extends VBox {
  private static final double ROW = 64;
  private static final double LOW = 48;

  private final Look look;
  private final SwapWork work;
  private final Runnable next;
  private final SafetyTicks ticks;
  private final @Nullable SwapChoiceView<Boolean> fit;

  /**
   * @param next goes on to what is needed next
   */
  SwapSafetyView(Look look, SwapWork work, SwapSheet now, Runnable next) {
    super(6);
    this.look = look;
    this.work = work;
    this.next = next;
    this.ticks = new SafetyTicks(look, LOW, work::confirm, next);
    GridPane grid = new GridPane();
    grid.setHgap(14);
    for (int i = 0; i < 2; i++) {
      ColumnConstraints half = new ColumnConstraints();
      half.setPercentWidth(50);
      grid.getColumnConstraints().add(half);
    }
    int at = 0;
    for (SafetyRow check : now.confirmed()) {
      grid.add(row(ticks.add(check)), at % 2, at / 2);
      at++;
    }
    fit = now.fitAsked() ? fit() : null;
    if (fit != null) {
      fit.getStyleClass().add("swap-row");
      grid.add(row(fit), at % 2, at / 2);
    }
    getChildren()
        .setAll(
            new SwapHeadingView(SwapWords.say("safe")),
            grid,
            new Caution(SwapWords.say("caution"), Words.of("cautions").say("short")),
            new Caution(SwapWords.say("caution"), Words.of("cautions").say("emergency")));
    show(now);
  }

  private Region row(Region part) {
    part.prefHeightProperty().bind(look.touch(ROW));
    return part;
  }

  private SwapChoiceView<Boolean> fit() {
    Map<Boolean, String> options = new LinkedHashMap<>();
    options.put(true, SwapWords.say("rider.fit.yes"));
    options.put(false, SwapWords.say("rider.fit.no"));
    return new SwapChoiceView<>(
        look,
        SwapWords.say("rider.fit.brief"),
        SwapWords.say("rider.fit"),
        options,
        52,
        yes -> {
          work.riderFit(yes);
          next.run();
        });
  }

  /** Does what a letter stands for; false if it stands for nothing. */
  boolean key(String letter) {
    if (ticks.key(letter)) {
      return true;
    }
    boolean yes = letter.equals(SwapWords.say("key.fit"));
    if (fit != null && (yes || letter.equals(SwapWords.say("key.unfit")))) {
      work.riderFit(yes);
      WholeInView.show(fit);
      return true;
    }
    return false;
  }

  /** Shows what is confirmed. */
  void show(SwapSheet now) {
    ticks.show(now.confirmed());
    if (fit != null) {
      fit.show(now.riderFit());
    }
  }

  /** The first tick or answer that is still open; empty if none is. */
  Optional<Node> open() {
    return ticks
        .open()
        .or(
            () ->
                fit != null && fit.open()
                    ? Optional.<Node>of(fit.first())
                    : Optional.<Node>empty());
  }
}

package blindlap.screen.plan;

import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.wording.AnswerWords;
import blindlap.wording.PlanWords;
import javafx.beans.InvalidationListener;
import javafx.beans.binding.Bindings;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.collections.ListChangeListener;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Button;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.scene.text.Text;
import javafx.scene.text.TextFlow;
import org.jspecify.annotations.Nullable;

/**
 * The lower edge of the Plan page, in sight wherever the page is scrolled: what the day can show,
 * what is still to mend, and what can be taken back.
 */
final class PlanBarView extends VBox {
  /** Height of a page, in pixels, of which a bar in large type would take a third and more. */
  private static final double LOW = 640;

  private final PlanModel model;
  private final TextFlow answer = new TextFlow();
  private final Hyperlink mend = new Hyperlink();

  @SuppressWarnings({"unused", "FieldCanBeLocal"}) // held so that the look can reach this bar
  private final InvalidationListener watch;

  /**
   * @param back takes the last step back
   * @param again does it again
   * @param jump goes to what is to be mended first
   */
  PlanBarView(Look look, PlanModel model, Runnable back, Runnable again, Runnable jump) {
    super(6);
    this.model = model;
    getStyleClass().add("plan-bar");
    answer.getStyleClass().add("bar-answer");
    answer.setAccessibleRole(AccessibleRole.TEXT);
    answer.setMinHeight(Region.USE_PREF_SIZE);
    mend.setOnAction(
        e -> {
          mend.setVisited(false);
          jump.run();
        });
    mend.setId("mend-next");
    mend.setWrapText(true);
    mend.managedProperty().bind(mend.visibleProperty());
    Label saved = Fields.words("", "note", "second");
    saved.textProperty().bind(model.savedProperty());
    Button redo = step("undo.again", "do-again", model.undo().againProperty(), again);
    redo.visibleProperty().bind(redo.disableProperty().not());
    redo.managedProperty().bind(redo.visibleProperty());
    FlowPane row =
        Fields.tight(
            mend, step("undo.back", "take-back", model.undo().backProperty(), back), redo, saved);
    row.setRowValignment(javafx.geometry.VPos.CENTER);
    getChildren().setAll(answer, row);
    model
        .answer()
        .shownProperty()
        .addListener((o, before, now) -> say(before.sentence(), now.sentence()));
    say(null, model.answer().shownProperty().get().sentence());
    model.mends().addListener((ListChangeListener<PlanMend>) change -> mends());
    watch = look.watch(() -> large(look.stacked()));
    large(look.stacked());
  }

  private static Button step(String key, String id, ReadOnlyStringProperty what, Runnable work) {
    Button button = Fields.button("", work);
    button.setId(id);
    button.getStyleClass().add("quiet");
    button
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () ->
                    what.get().isEmpty()
                        ? PlanWords.say("undo.nothing")
                        : PlanWords.say(key, what.get()),
                what));
    button.disableProperty().bind(what.isEmpty());
    return button;
  }

  /** Large text is smaller here: the bar may not take the page's room. */
  private void large(boolean now) {
    getStyleClass().remove("large");
    if (now) {
      getStyleClass().add("large");
    }
    mends();
  }

  /** How high the page is, with this bar. */
  void within(double height) {
    getStyleClass().remove("low");
    if (height < LOW) {
      getStyleClass().add("low");
    }
  }

  private void mends() {
    int count = model.mends().size();
    mend.setVisible(count > 0);
    String words =
        count == 0 ? "" : PlanWords.say("mend.count", count, model.mends().get(0).inShort());
    mend.setAccessibleText(words);
    // With large text the number alone leaves the line to what can be taken back.
    boolean alone = count > 0 && getStyleClass().contains("large");
    mend.setText(alone ? PlanWords.say("mend.number", count) : words);
  }

  private void say(AnswerWords.@Nullable Sentence before, AnswerWords.Sentence sentence) {
    if (sentence.equals(before)) {
      return;
    }
    answer.getChildren().clear();
    add(sentence.before(), false);
    add(sentence.marked(), true);
    add(sentence.after(), false);
    answer.setAccessibleText(sentence.text());
  }

  private void add(String words, boolean marked) {
    if (words.isEmpty()) {
      return;
    }
    if (marked) {
      Label stroke = new Label(words);
      stroke.getStyleClass().add("highlit");
      stroke.setWrapText(true);
      answer.getChildren().add(stroke);
    } else {
      Text text = new Text(words);
      text.getStyleClass().add("words");
      answer.getChildren().add(text);
    }
  }
}

package blindlap.screen.part;

import blindlap.wording.day.RideWords;
import blindlap.wording.day.Words;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javafx.beans.binding.Bindings;
import javafx.beans.value.ObservableBooleanValue;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** What may be said of the day at any time, one button each, no phrase. */
public final class DayEventsView extends VBox {
  /** The helper's page has words of its own for what it seals. */
  private static final Words HELPER = Words.of("swap");

  /** So wide that what will follow takes three lines and leaves the fields beside it in sight. */
  private static final int ASKED = 420;

  private final Look look;
  private final DayEventsModel events;
  private final Label answer = new Label();
  private final Button settled = new Button();
  private final CheckBox knows = new CheckBox(RideWords.say("cut.knows"));
  private final Label known = new Label(RideWords.say("cut.known"));
  private final Caution caution;
  private final Node blind;
  private final Node cover;

  /**
   * What may be said on the rider's page.
   *
   * @param events takes what is said
   */
  public DayEventsView(Look look, DayEventsModel events) {
    this(look, events, null, false);
  }

  /**
   * What may be said on a page.
   *
   * @param helperChanged takes the name of another helper; null on the rider's page
   * @param sealed true if the words on an event are sealed
   */
  public DayEventsView(
      Look look, DayEventsModel events, @Nullable Consumer<String> helperChanged, boolean sealed) {
    super(16);
    this.look = look;
    this.events = events;
    answer.setWrapText(true);
    answer.setMinHeight(USE_PREF_SIZE);
    answer.getStyleClass().add("strong");
    if (helperChanged != null && !sealed) {
      Label open = new Label(HELPER.say("event.open"));
      open.setWrapText(true);
      open.getStyleClass().add("strong");
      getChildren().add(open);
    }
    if (helperChanged != null) {
      getChildren()
          .add(one(HELPER.say("helper.changed"), HELPER.say("helper.changed.who"), helperChanged));
    }
    String broken =
        helperChanged == null ? RideWords.say("blind.broken") : HELPER.say("blind.broken");
    blind = one(broken, asked("blind.broken.what", sealed), events::blindBroken);
    cover = one(RideWords.say("cover.off"), asked("cover.off.what", sealed), events::coverOff);
    caution = new Caution(RideWords.say("caution"), Words.of("cautions").say("emergency"));
    getChildren().addAll(caution, blind, cover, cut(), closing(), answer);
    events.saidProperty().addListener((o, before, now) -> answer());
    events.troubleProperty().addListener((o, before, now) -> answer());
    answer();
  }

  /** The rider is told what is on: no blind can break, and nobody else knows more. */
  public void withoutBlind() {
    getChildren().removeAll(caution, blind, cover);
    nobodyKnowsMore();
  }

  /** The rider is told a label: what can come out is which part bears it. */
  public void withLabels() {
    replace(
        caution,
        new Caution(RideWords.say("caution"), Words.of("cautions").say("emergency.labels")));
    replace(
        blind,
        one(RideWords.say("labels.out"), RideWords.say("labels.out.what"), events::blindBroken));
    nobodyKnowsMore();
  }

  private void replace(Node before, Node now) {
    getChildren().set(getChildren().indexOf(before), now);
  }

  private void nobodyKnowsMore() {
    knows.setVisible(false);
    knows.setManaged(false);
    known.setVisible(true);
  }

  /** What became of what was pressed last stands below it: an eye that is there need not search. */
  private void answer() {
    String trouble = events.troubleProperty().get();
    answer.setText(trouble.isEmpty() ? events.saidProperty().get() : trouble);
    answer.setManaged(!answer.getText().isEmpty());
    answer.setVisible(answer.isManaged());
  }

  private void pressed(VBox part, Runnable action) {
    if (answer.getParent() instanceof VBox before && before != part) {
      before.getChildren().remove(answer);
      part.getChildren().add(answer);
    }
    action.run();
    answer();
  }

  private static String asked(String key, boolean sealed) {
    return sealed ? HELPER.say(key) : RideWords.say(key);
  }

  /** One event with a word on what happened; Enter says it. */
  private Node one(String title, String asked, Consumer<String> event) {
    TextField what = field(asked);
    VBox part = WholeInView.together(new VBox(8));
    Runnable say = () -> pressed(part, () -> event.accept(what.getText().strip()));
    what.setOnAction(e -> say.run());
    part.getChildren().setAll(row(what, button(title, say)));
    return part;
  }

  /**
   * Offers the reason "settled" with a press, while a look before the end has told that the day may
   * stop.
   */
  public void offerSettled(ObservableBooleanValue told) {
    settled.visibleProperty().bind(told);
  }

  private void settles(TextField reason) {
    settled.setId("cut-settled");
    settled.setText(RideWords.say("cut.settled"));
    settled.minHeightProperty().bind(look.touch());
    settled.setMinWidth(USE_PREF_SIZE);
    settled.managedProperty().bind(settled.visibleProperty());
    settled.setVisible(false);
    settled.setOnAction(e -> reason.setText(RideWords.say("cut.reason.settled")));
  }

  private Node cut() {
    TextField reason = field(RideWords.say("cut.reason"));
    TextField by = field(RideWords.say("cut.by"));
    knows.minHeightProperty().bind(look.touch());
    VBox part = WholeInView.together(new VBox(8));
    Runnable end =
        () ->
            pressed(
                part,
                () ->
                    events.cutShort(
                        reason.getText().strip(), by.getText().strip(), knows.isSelected()));
    reason.setOnAction(e -> by.requestFocus());
    // The reason has the whole width: at the end of what it asks stands that no setup is named.
    settles(reason);
    known.setWrapText(true);
    known.setMinHeight(USE_PREF_SIZE);
    known.managedProperty().bind(known.visibleProperty());
    known.setVisible(false);
    part.getChildren().setAll(known, row(reason, settled), row(by, knows, asked("cut", end)));
    return part;
  }

  private Node closing() {
    Label note = new Label(RideWords.say("close.note"));
    note.setWrapText(true);
    note.setMinHeight(USE_PREF_SIZE);
    VBox part = WholeInView.together(new VBox(8));
    Runnable close = () -> pressed(part, events::closeDay);
    AskedOnce asked = asked("close", close, events::missing);
    if (!look.stacked()) {
      // What is missing is said in full: it has the whole width, and what was read before goes.
      asked.inOneRow();
      asked.maxWidthProperty().unbind();
      asked.setMaxWidth(Double.MAX_VALUE);
      note.visibleProperty().bind(asked.askingProperty().not());
      note.managedProperty().bind(note.visibleProperty());
      HBox.setHgrow(asked, Priority.SOMETIMES);
    }
    part.getChildren().setAll(row(note, asked));
    return part;
  }

  /** What ends the day cannot be undone: it says what will follow and asks once. */
  private AskedOnce asked(String key, Runnable work) {
    return asked(key, work, () -> "");
  }

  /**
   * @param missing what is still missing when it is pressed; empty if nothing is
   */
  private AskedOnce asked(String key, Runnable work, Supplier<String> missing) {
    AskedOnce.Words words = words(key, "");
    AskedOnce asked = new AskedOnce(look, words, () -> words(key, missing.get()), work);
    asked.maxWidthProperty().bind(look.px(ASKED));
    if (!look.stacked()) {
      // Beside a long sentence it would be squeezed to one word a line.
      asked
          .minWidthProperty()
          .bind(
              Bindings.when(asked.askingProperty())
                  .then(look.px(ASKED))
                  .otherwise(USE_COMPUTED_SIZE));
    }
    return asked;
  }

  private static AskedOnce.Words words(String key, String missing) {
    String follows = RideWords.say(key + ".follows");
    return new AskedOnce.Words(
        RideWords.say(key),
        missing.isEmpty() ? follows : missing + " " + follows,
        RideWords.say(key + ".not"));
  }

  /** Side by side, so that all that may happen is in view; with large text one below the other. */
  private Node row(Region... parts) {
    if (look.stacked()) {
      return new VBox(10, parts);
    }
    HBox row = new HBox(12, parts);
    row.setAlignment(Pos.CENTER_LEFT);
    for (Region part : parts) {
      if (!(part instanceof Button) && !(part instanceof AskedOnce)) {
        part.setMaxWidth(Double.MAX_VALUE);
        HBox.setHgrow(part, Priority.ALWAYS);
      }
    }
    return row;
  }

  private TextField field(String asked) {
    TextField field = Fields.wide(new TextField());
    field.setPromptText(asked);
    field.setAccessibleText(asked);
    field.minHeightProperty().bind(look.touch());
    return field;
  }

  private Button button(String words, Runnable action) {
    Button button = new Button(words);
    button.minHeightProperty().bind(look.touch());
    button.setMinWidth(USE_PREF_SIZE);
    button.setOnAction(e -> action.run());
    return button;
  }
}

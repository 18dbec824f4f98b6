package blindlap.screen.part;

import blindlap.wording.day.RideWords;
import blindlap.wording.day.Words;
import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** What may be said of the day at any time, one button each, no phrase. */
public final class DayEventsView extends VBox {
  /** The helper's page has words of its own for what it seals. */
  private static final Words HELPER = Words.of("swap");

  private final Look look;
  private final DayEventsModel events;

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
    super(24);
    this.look = look;
    this.events = events;
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
    Node blind = one(broken, asked("blind.broken.what", sealed), events::blindBroken);
    Node cover = one(RideWords.say("cover.off"), asked("cover.off.what", sealed), events::coverOff);
    Caution caution = new Caution(RideWords.say("caution"), Words.of("cautions").say("emergency"));
    Label trouble = new Label();
    trouble.setWrapText(true);
    trouble.getStyleClass().add("strong");
    trouble.textProperty().bind(events.troubleProperty());
    Label said = new Label();
    said.setWrapText(true);
    said.getStyleClass().add("lead");
    said.textProperty().bind(events.saidProperty());
    getChildren().addAll(caution, blind, cover, cut(), closing(), trouble, said);
  }

  private static String asked(String key, boolean sealed) {
    return sealed ? HELPER.say(key) : RideWords.say(key);
  }

  /** One event with a word on what happened. */
  private Node one(String title, String asked, Consumer<String> event) {
    TextField what = field(asked);
    return part(title(title), what, button(title, () -> event.accept(what.getText().strip())));
  }

  private Node cut() {
    TextField reason = field(RideWords.say("cut.reason"));
    TextField by = field(RideWords.say("cut.by"));
    CheckBox knows = new CheckBox(RideWords.say("cut.knows"));
    knows.minHeightProperty().bind(look.touch());
    return part(
        title(RideWords.say("cut")),
        reason,
        by,
        knows,
        button(
            RideWords.say("cut"),
            () ->
                events.cutShort(
                    reason.getText().strip(), by.getText().strip(), knows.isSelected())));
  }

  private Node closing() {
    Label note = new Label(RideWords.say("close.note"));
    note.setWrapText(true);
    return part(
        title(RideWords.say("close")), note, button(RideWords.say("close"), events::closeDay));
  }

  private static VBox part(Node... nodes) {
    return new VBox(10, nodes);
  }

  private static Label title(String words) {
    Label label = new Label(words);
    label.getStyleClass().add("field-title");
    return label;
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
    button.setOnAction(e -> action.run());
    return button;
  }
}

package blindlap.screen.plan;

import blindlap.plan.PlanOptions;
import blindlap.screen.part.Fields;
import blindlap.screen.part.SteadyBox;
import blindlap.screen.part.TypedForm;
import blindlap.wording.PlanWords;
import javafx.beans.value.ObservableBooleanValue;
import javafx.collections.ListChangeListener;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.RadioButton;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;

/** The trials of a telling run: what is asked, how often, and what would matter. */
final class PlanTellingView extends SteadyBox {
  private static final String PART = "telling_run";

  private final TypedForm run;
  private final PlanTelling telling;
  private final VBox more = new VBox();

  PlanTellingView(TypedForm form, PlanTelling telling) {
    super(12);
    this.run = form.part(PART);
    this.telling = telling;
    getStyleClass().add("section");
    Button settle = Fields.button(PlanWords.say("telling.settle"), telling::settle);
    settle.setId("telling-settle");
    shownWhile(settle, telling.unlike());
    Button leave = Fields.button(PlanWords.say("telling.leave"), telling::leave);
    leave.setId("telling-leave");
    shownWhile(leave, telling.chosen().not());
    FlowPane words = Fields.row(text("attribute", 22), more);
    shownWhile(words, telling.words());
    telling.names().addListener((ListChangeListener<String>) change -> more());
    more();
    getChildren()
        .setAll(
            PlanFieldsView.heading("head.telling"),
            Fields.words(PlanWords.say("note.telling"), "second"),
            settle,
            leave,
            Fields.row(task(), trials(), text("matters", 5)),
            words);
    shownWhile(this, telling.chosen().or(telling.typed()));
  }

  private VBox task() {
    return Fields.helped(
        Fields.choice(
            run.field("task"),
            PlanWords.field(PART + ".task"),
            PlanOptions.of("task"),
            PlanWords.say("default.task")),
        PlanWords.help(PART + ".task"));
  }

  private VBox trials() {
    VBox field = Fields.text(run.field("trials"), PlanWords.field(PART + ".trials"), "", 4);
    Fields.helped(field, PlanWords.help(PART + ".trials"));
    TextField typed = (TextField) field.getChildren().get(1);
    typed.setId("trials");
    typed.promptTextProperty().bind(telling.usual());
    HBox row = new HBox(6, turn("−", "trials.fewer", -1), typed, turn("+", "trials.more", 1));
    row.setAlignment(Pos.CENTER_LEFT);
    field.getChildren().add(1, row);
    return field;
  }

  private Button turn(String sign, String words, int by) {
    Button button = Fields.button(sign, () -> telling.turnTrials(by));
    button.setAccessibleText(PlanWords.say(words));
    button.setId(words.replace('.', '-'));
    button.getStyleClass().add("turn");
    return button;
  }

  /** Made anew with other names, since a choice whose words change forgets what was chosen. */
  private void more() {
    more.getChildren()
        .setAll(
            Fields.helped(
                Fields.choice(
                    run.field("more"),
                    PlanWords.field(PART + ".more"),
                    telling.names(),
                    PlanWords.say("default.more")),
                PlanWords.help(PART + ".more")));
  }

  private Node text(String name, int columns) {
    return PlanFieldsView.text(run, PART, name, columns);
  }

  /** Two setups, or two levels of one setting. */
  static VBox between(PlanTelling telling) {
    ToggleGroup group = new ToggleGroup();
    RadioButton setups = choice("telling.setups", group, telling::betweenSetups);
    RadioButton levels = choice("telling.levels", group, telling::betweenLevels);
    Runnable show =
        () -> {
          setups.setSelected(!telling.levels().get());
          levels.setSelected(telling.levels().get());
        };
    telling.levels().addListener((o, before, now) -> show.run());
    show.run();
    VBox box = new VBox(6, Fields.words(PlanWords.say("telling.between"), "note"), setups, levels);
    shownWhile(box, telling.chosen());
    return box;
  }

  private static RadioButton choice(String key, ToggleGroup group, Runnable work) {
    RadioButton button = new RadioButton(PlanWords.say(key));
    button.setWrapText(true);
    button.setId(key.replace('.', '-'));
    button.setToggleGroup(group);
    button.setOnAction(e -> work.run());
    return button;
  }

  /** Takes no room while it is not shown. */
  static void shownWhile(Node node, ObservableBooleanValue shown) {
    node.visibleProperty().bind(shown);
    node.managedProperty().bind(node.visibleProperty());
  }
}

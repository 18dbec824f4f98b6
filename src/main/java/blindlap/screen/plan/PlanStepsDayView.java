package blindlap.screen.plan;

import blindlap.plan.PlanOptions;
import blindlap.screen.part.Fields;
import blindlap.screen.part.SteadyBox;
import blindlap.screen.part.TypedForm;
import blindlap.wording.PlanWords;
import java.util.stream.Stream;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;

/**
 * One setting, its levels, and how they are set so that the handling tells nothing: of a steps day
 * or of a telling run.
 */
final class PlanStepsDayView extends SteadyBox {
  @SuppressWarnings("FieldCanBeLocal") // held as long as the view is
  private final BooleanBinding pressure;

  private final TypedForm steps;
  private final String own;

  /** Of a steps day. */
  PlanStepsDayView(TypedForm form, PlanStepsDay day) {
    this(form.part("steps_day"), "steps_day", day);
    Button one = Fields.button(PlanWords.say("one.setup"), day::oneSetup);
    one.setId("one-setup");
    shownWhile(one, day.unlike());
    getChildren().add(0, one);
  }

  /**
   * @param steps the fields
   * @param own what they are called in the bundle, where they have words of their own
   */
  PlanStepsDayView(TypedForm steps, String own, PlanStepsDay day) {
    super(10);
    this.steps = steps;
    this.own = own;
    TypedForm.Entry way = steps.field("way");
    pressure =
        Bindings.createBooleanBinding(() -> way.get().equals("pressure"), way.textProperty());
    Label handlings = Fields.words("", "note", "strong");
    handlings.setId(own.equals("steps_day") ? "handlings" : "handlings-of-" + own);
    handlings.textProperty().bind(day.handlings());
    handlings.managedProperty().bind(handlings.textProperty().isNotEmpty());
    FlowPane around = Fields.row(text("low", 6), text("high", 6));
    shownWhile(around, pressure);
    getChildren()
        .setAll(
            Fields.row(text("setting", 12), text("unit", 13), text("levels", 16)),
            PlanFieldsView.choice(steps, "way", PlanOptions.of("way")),
            around,
            Fields.row(text("least", 6), text("most", 6), text("source", 14)),
            Fields.words(PlanWords.say("note.levels." + own), "note", "second"),
            handlings);
  }

  private Node text(String name, int columns) {
    String such = own + "." + name;
    String help =
        Stream.of(such, "steps_day." + name, name)
            .map(PlanWords::help)
            .filter(words -> !words.isEmpty())
            .findFirst()
            .orElse("");
    return Fields.helped(
        Fields.text(
            steps.field(name),
            PlanWords.field("steps_day." + name),
            PlanWords.example(PlanWords.has("such." + such) ? such : name),
            columns),
        help);
  }

  private static void shownWhile(Node node, BooleanBinding shown) {
    node.visibleProperty().bind(shown);
    node.managedProperty().bind(shown);
  }
}

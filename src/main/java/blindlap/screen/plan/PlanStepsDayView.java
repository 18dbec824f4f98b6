package blindlap.screen.plan;

import blindlap.plan.PlanOptions;
import blindlap.screen.part.Fields;
import blindlap.screen.part.SteadyBox;
import blindlap.screen.part.TypedForm;
import blindlap.wording.PlanWords;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;

/**
 * The setting of a steps day, its levels, and how they are set so that the handling tells nothing.
 */
final class PlanStepsDayView extends SteadyBox {
  @SuppressWarnings("FieldCanBeLocal") // held as long as the view is
  private final BooleanBinding pressure;

  PlanStepsDayView(TypedForm form, PlanStepsDay day) {
    super(10);
    TypedForm steps = form.part("steps_day");
    TypedForm.Entry way = steps.field("way");
    pressure =
        Bindings.createBooleanBinding(() -> way.get().equals("pressure"), way.textProperty());
    Button one = Fields.button(PlanWords.say("one.setup"), day::oneSetup);
    one.setId("one-setup");
    shownWhile(one, day.unlike());
    Label handlings = Fields.words("", "note", "strong");
    handlings.setId("handlings");
    handlings.textProperty().bind(day.handlings());
    handlings.managedProperty().bind(handlings.textProperty().isNotEmpty());
    FlowPane around = Fields.row(text(steps, "low", 6), text(steps, "high", 6));
    shownWhile(around, pressure);
    getChildren()
        .setAll(
            one,
            Fields.row(
                text(steps, "setting", 12), text(steps, "unit", 13), text(steps, "levels", 16)),
            PlanFieldsView.choice(steps, "way", PlanOptions.of("way")),
            around,
            Fields.row(text(steps, "least", 6), text(steps, "most", 6), text(steps, "source", 14)),
            Fields.words(PlanWords.say("note.levels"), "note", "second"),
            handlings);
  }

  private static Node text(TypedForm steps, String name, int columns) {
    return PlanFieldsView.text(steps, "steps_day", name, columns);
  }

  private static void shownWhile(Node node, BooleanBinding shown) {
    node.visibleProperty().bind(shown);
    node.managedProperty().bind(shown);
  }
}

package blindlap.screen.plan;

import blindlap.plan.PlanOptions;
import blindlap.screen.part.Fields;
import blindlap.screen.part.SteadyBox;
import blindlap.screen.part.TypedForm;
import blindlap.wording.PlanWords;
import java.util.ArrayList;
import java.util.List;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.collections.ListChangeListener;
import javafx.collections.WeakListChangeListener;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/**
 * What times a measure of time, and from which gate to which. What was typed stays in sight:
 * nothing that counts is hidden.
 */
final class PlanTimedView extends SteadyBox {
  private final TypedForm measure;
  private final PlanTiming timing;
  private final FlowPane ways = Fields.row();
  private final ListChangeListener<String> renewed = change -> choices();

  PlanTimedView(TypedForm measure, PlanTiming timing) {
    super(8);
    this.measure = measure;
    this.timing = timing;
    TypedForm.Entry kind = measure.field("kind");
    TypedForm.Entry by = measure.field("timed_by");
    TypedForm.Entry from = measure.field("from_gate");
    TypedForm.Entry to = measure.field("to_gate");
    VBox source =
        Fields.helped(
            Fields.choice(
                by,
                PlanWords.field("measure.timed_by"),
                PlanOptions.of("timed_by"),
                PlanWords.say("default.measure.timed_by")),
            PlanWords.help("measure.timed_by"));
    BooleanBinding sector =
        Bindings.createBooleanBinding(
            () ->
                kind.get().startsWith("sector") && by.get().startsWith("recording")
                    || !from.get().isBlank()
                    || !to.get().isBlank(),
            kind.textProperty(),
            by.textProperty(),
            from.textProperty(),
            to.textProperty());
    shown(ways, sector);
    shown(
        this,
        Bindings.createBooleanBinding(
            () -> kind.get().endsWith("time") || !by.get().isBlank() || sector.get(),
            kind.textProperty(),
            by.textProperty(),
            sector));
    // The list of gates outlives the part of a measure that is removed.
    timing.gates().addListener(new WeakListChangeListener<>(renewed));
    choices();
    getChildren().setAll(Fields.row(source), ways);
  }

  private static void shown(javafx.scene.Node node, BooleanBinding when) {
    node.visibleProperty().bind(when);
    node.managedProperty().bind(node.visibleProperty());
  }

  /** Made anew with other gates, since a choice whose words change forgets what was chosen. */
  private void choices() {
    ways.getChildren().setAll(gate("from_gate"), gate("to_gate"));
  }

  private VBox gate(String name) {
    List<String> words = new ArrayList<>(List.of(""));
    words.addAll(timing.gates());
    return Fields.helped(
        Fields.choice(
            measure.field(name), PlanWords.field(name), words, PlanWords.say("default." + name)),
        PlanWords.help(name));
  }
}

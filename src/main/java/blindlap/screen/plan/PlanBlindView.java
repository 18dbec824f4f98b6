package blindlap.screen.plan;

import blindlap.plan.BlindLevel;
import blindlap.plan.PlanOptions;
import blindlap.screen.part.DateField;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.SteadyBox;
import blindlap.screen.part.TypedForm;
import blindlap.wording.PlanWords;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import javafx.beans.binding.Bindings;
import javafx.beans.value.ObservableBooleanValue;
import javafx.scene.Node;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/**
 * How blind the day is, and what else is asked at that level. A field of another level stays in
 * sight while something stands in it: nothing that counts is hidden.
 */
final class PlanBlindView extends SteadyBox {
  private static final Set<BlindLevel> ALL = EnumSet.allOf(BlindLevel.class);
  private static final Set<BlindLevel> COVERED =
      EnumSet.of(BlindLevel.MASKED, BlindLevel.PREPARED, BlindLevel.HELPER);
  private static final Set<BlindLevel> BLIND = EnumSet.of(BlindLevel.PREPARED, BlindLevel.HELPER);
  private static final Set<BlindLevel> HELPER = EnumSet.of(BlindLevel.HELPER);
  private static final Set<BlindLevel> MASKED = EnumSet.of(BlindLevel.MASKED);
  private static final Set<BlindLevel> PREPARED = EnumSet.of(BlindLevel.PREPARED);
  private static final Set<BlindLevel> FRIEND = EnumSet.of(BlindLevel.MASKED, BlindLevel.PREPARED);

  private final PlanLevel level;
  private final TypedForm form;

  /**
   * @param form the part of the draft that this is
   * @param guessed false where nothing is guessed apart from what is answered
   * @param step makes what is changed in it one step that can be taken back
   */
  PlanBlindView(
      Look look, TypedForm form, ObservableBooleanValue guessed, Consumer<Runnable> step) {
    this.form = form;
    this.level = new PlanLevel(form, step);
    getStyleClass().add("section");
    getChildren()
        .setAll(
            PlanFieldsView.heading("head.blinding"),
            Fields.words(PlanWords.help("level"), "second"),
            new PlanLevelView(look, level),
            people(guessed),
            PlanFieldsView.fold("more.blinding", places()));
  }

  private FlowPane people(ObservableBooleanValue guessed) {
    VBox guesses = new VBox(at(BLIND, "guesses", PlanFieldsView.yesNo(form, "guesses")));
    PlanTellingView.shownWhile(guesses, guessed);
    return Fields.row(
        at(HELPER, "helper", PlanFieldsView.text(form, "helper", 13)),
        at(FRIEND, "prepared_by", PlanFieldsView.text(form, "prepared_by", 13)),
        at(FRIEND, "prepared_on", preparedOn()),
        at(MASKED, "masks", PlanFieldsView.choice(form, "masks", PlanOptions.of("masks"))),
        at(PREPARED, "units", PlanFieldsView.text(form, "units", 4)),
        at(PREPARED, "recovers", PlanFieldsView.yesNo(form, "recovers")),
        guesses,
        at(ALL, "times", PlanFieldsView.choice(form, "times", PlanOptions.of("times"))),
        at(
            ALL,
            "record_of",
            PlanFieldsView.choice(form, "record_of", PlanOptions.of("record_of"))));
  }

  private VBox preparedOn() {
    return Fields.helped(
        DateField.of(
            form.field("prepared_on"), PlanWords.field("prepared_on"), PlanWords.example("day")),
        PlanWords.help("prepared_on"));
  }

  private FlowPane places() {
    Map<String, Set<BlindLevel>> fields = new LinkedHashMap<>();
    fields.put("cover", COVERED);
    fields.put("ballast", COVERED);
    fields.put("noise", HELPER);
    fields.put("rider_waits", HELPER);
    fields.put("helper_waits", HELPER);
    fields.put("bike_moved_by", HELPER);
    fields.put("levers_touched_by", HELPER);
    fields.put("others_who_know", BLIND);
    fields.put("timed_by", ALL);
    fields.put("remaining_cues", COVERED);
    FlowPane texts = Fields.row();
    fields.forEach(
        (name, levels) ->
            texts
                .getChildren()
                .add(at(levels, name, PlanFieldsView.text(form, "blinding", name, 22))));
    return texts;
  }

  private Node at(Set<BlindLevel> levels, String name, VBox field) {
    TypedForm.Entry entry = form.field(name);
    field
        .visibleProperty()
        .bind(
            Bindings.createBooleanBinding(
                () ->
                    levels.contains(level.levelProperty().get())
                        || !entry.get().isBlank()
                        || !entry.errorProperty().get().isEmpty(),
                level.levelProperty(),
                entry.textProperty(),
                entry.errorProperty()));
    field.managedProperty().bind(field.visibleProperty());
    return field;
  }
}

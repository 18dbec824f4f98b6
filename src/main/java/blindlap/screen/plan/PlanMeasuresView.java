package blindlap.screen.plan;

import blindlap.plan.PlanOptions;
import blindlap.screen.part.Fields;
import blindlap.screen.part.SteadyBox;
import blindlap.screen.part.TypedForm;
import blindlap.wording.PlanWords;
import javafx.beans.binding.Bindings;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.StringProperty;
import javafx.scene.control.ComboBox;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** The measures, with the starter list. */
final class PlanMeasuresView extends SteadyBox {
  PlanMeasuresView(PlanModel model) {
    super(16);
    ComboBox<String> starters = new ComboBox<>();
    starters.getItems().setAll(model.starters().measureNames());
    starters.setPromptText(PlanWords.say("starter.measure"));
    starters.setAccessibleText(PlanWords.say("starter.measure"));
    starters.setId("starter-measure");
    starters.setOnAction(
        e -> {
          String chosen = starters.getValue();
          if (chosen != null) {
            model.starters().addMeasure(chosen);
          }
        });
    getChildren()
        .setAll(
            pay(model),
            new PlanRowsView(
                model.form().list("measures"),
                PlanWords.field("measures.one"),
                measure -> measure(measure, model.timing())),
            PlanFieldsView.buttons(
                Fields.button(PlanWords.say("add.measure"), () -> model.form().add("measures")),
                starters),
            new PlanRowsView(
                model.form().list("covariates"),
                PlanWords.field("covariates.one"),
                PlanMeasuresView::covariate),
            covariates(model));
  }

  /** A telling run has none: nothing is taken out of answers. */
  private static VBox covariates(PlanModel model) {
    VBox box =
        new VBox(
            16,
            Fields.row(
                Fields.button(
                    PlanWords.say("add.covariate"), () -> model.form().add("covariates"))),
            Fields.words(PlanWords.help("covariates"), "second"));
    PlanTellingView.shownWhile(box, model.rules().telling().alone().not());
    return box;
  }

  /** What no setup can touch, with the reason. */
  private static VBox covariate(TypedForm covariate) {
    return new VBox(
        8,
        Fields.row(
            PlanFieldsView.text(covariate, "covariate", "name", 14),
            option(covariate, "kind", "covariate"),
            PlanFieldsView.text(covariate, "covariate", "unit", 14),
            option(covariate, "by", "by"),
            option(covariate, "per", "per"),
            PlanFieldsView.text(covariate, "covariate", "correlation", 6)),
        PlanFieldsView.text(covariate, "covariate", "reason", 44));
  }

  private static VBox option(TypedForm covariate, String name, String options) {
    String own = "covariate." + name;
    String usual = "default." + own;
    return Fields.helped(
        Fields.choice(
            covariate.field(name),
            PlanWords.field(own),
            PlanOptions.of(options),
            PlanWords.has(usual) ? PlanWords.say(usual) : ""),
        PlanWords.help(own));
  }

  /** What the setups cost, to choose the worthwhile difference by. */
  private static VBox pay(PlanModel model) {
    VBox lines = new VBox(2);
    Runnable show =
        () ->
            lines
                .getChildren()
                .setAll(
                    model.answer().shownProperty().get().pay().stream()
                        .map(line -> Fields.words(line, "strong"))
                        .toList());
    model.answer().shownProperty().addListener((o, before, now) -> show.run());
    show.run();
    return lines;
  }

  /** What is better goes by the kind as long as nothing else is said. */
  private static VBox better(TypedForm measure) {
    StringProperty kind = measure.field("kind").textProperty();
    return Fields.helped(
        Fields.choice(
            measure.field("better"),
            PlanWords.field("better"),
            PlanOptions.of("better"),
            Bindings.createStringBinding(
                () ->
                    PlanWords.say(
                        kind.get().endsWith("scale")
                            ? "default.better.scale"
                            : "default.better.else"),
                kind)),
        PlanWords.help("better"));
  }

  private static VBox measure(TypedForm measure, PlanTiming timing) {
    FlowPane ends =
        Fields.row(
            PlanFieldsView.text(measure, "low_words", 13),
            PlanFieldsView.text(measure, "high_words", 13));
    ReadOnlyStringProperty kind = measure.field("kind").textProperty();
    ReadOnlyStringProperty low = measure.field("low_words").textProperty();
    ReadOnlyStringProperty high = measure.field("high_words").textProperty();
    // Only lines and scales have ends; words that were typed stay in sight.
    ends.visibleProperty()
        .bind(
            Bindings.createBooleanBinding(
                () -> kind.get().endsWith("scale") || !low.get().isBlank() || !high.get().isBlank(),
                kind,
                low,
                high));
    ends.managedProperty().bind(ends.visibleProperty());
    return new VBox(
        8,
        Fields.row(
            PlanFieldsView.text(measure, "measure", "name", 13),
            PlanFieldsView.choice(measure, "kind", PlanOptions.of("kind")),
            PlanFieldsView.text(measure, "unit", 6),
            PlanFieldsView.choice(measure, "role", PlanOptions.of("role")),
            better(measure),
            PlanFieldsView.text(measure, "worthwhile", 6)),
        ends,
        new PlanTimedView(measure, timing),
        PlanFieldsView.fold(
            "more.measure",
            Fields.row(
                PlanFieldsView.text(measure, "worthwhile_reason", 20),
                PlanFieldsView.text(measure, "definition", 20),
                PlanFieldsView.choice(measure, "drift", PlanOptions.of("drift")),
                PlanFieldsView.choice(measure, "scale", PlanOptions.of("scale")),
                PlanFieldsView.choice(measure, "summary", PlanOptions.of("summary")),
                PlanFieldsView.text(measure, "assessor", 13),
                PlanFieldsView.yesNo(measure, "assessor_knows"))));
  }
}

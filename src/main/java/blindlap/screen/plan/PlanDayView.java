package blindlap.screen.plan;

import blindlap.screen.part.Fields;
import blindlap.screen.part.TypedForm;
import blindlap.wording.PlanWords;
import java.util.List;
import javafx.beans.binding.Bindings;
import javafx.scene.control.Label;
import javafx.scene.control.TitledPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** The day against the clock, and swaps practised before it. */
final class PlanDayView {
  private static final List<String> MINUTES =
      List.of("lap", "climb", "swap", "scoring", "cool_down", "rest_every", "rest", "lap_budget");

  private PlanDayView() {}

  /** In the words of trials while the draft is one of a telling run. */
  private static VBox told(PlanModel model, String name, VBox field) {
    String help = "help.telling." + name;
    if (PlanWords.has(help) && field.getChildren().get(2) instanceof Label line) {
      line.textProperty()
          .bind(
              Bindings.when(model.rules().telling().chosen())
                  .then(PlanWords.say(help))
                  .otherwise(PlanWords.help(name)));
      field.getChildren().get(1).accessibleHelpProperty().unbind();
      field.getChildren().get(1).accessibleHelpProperty().bind(line.textProperty());
    }
    return field;
  }

  /** What a telling run has not, whose laps are of one kind. */
  private static VBox ofStints(PlanModel model, VBox field) {
    PlanTellingView.shownWhile(field, model.rules().telling().alone().not());
    return field;
  }

  /** Clock, laps and minutes; the day as a strip under them. */
  static VBox day(PlanModel model, VBox strip) {
    TypedForm laps = model.form().part("laps");
    TypedForm table = model.form().part("timetable");
    FlowPane clock =
        Fields.row(
            PlanFieldsView.text(table, "start", 5),
            PlanFieldsView.text(table, "daylight_end", 5),
            PlanFieldsView.text(table, "timetable", "zone", 12));
    FlowPane minutes = Fields.row();
    for (String field : MINUTES) {
      minutes.getChildren().add(told(model, field, PlanFieldsView.text(table, field, 4)));
    }
    FlowPane numbers =
        Fields.row(
            PlanFieldsView.text(laps, "warm_up", 4),
            ofStints(model, PlanFieldsView.text(laps, "settling", 4)),
            ofStints(model, PlanFieldsView.text(laps, "scored", 4)),
            ofStints(model, PlanFieldsView.text(model.form(), "looks", 10)));
    TitledPane practice =
        PlanFieldsView.fold(
            "practice.title",
            new VBox(
                12,
                Fields.row(PlanFieldsView.text(table, "practised", 24)),
                new PracticePane(model.practice())));
    practice.expandedProperty().addListener((o, before, now) -> model.practice().say());
    return Fields.section(
        PlanFieldsView.heading("head.day"), clock, minutes, numbers, practice, strip);
  }
}

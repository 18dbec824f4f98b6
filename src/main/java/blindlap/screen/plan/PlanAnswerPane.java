package blindlap.screen.plan;

import blindlap.plot.surface.Drawing;
import blindlap.screen.part.AnswerSentence;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Lead;
import blindlap.screen.part.Look;
import blindlap.screen.part.MarginNote;
import blindlap.screen.part.PlotView;
import blindlap.wording.PlanWords;
import java.util.List;
import java.util.Optional;
import javafx.beans.InvalidationListener;
import javafx.beans.binding.Bindings;
import javafx.geometry.HPos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TitledPane;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** What the day can show: the sections of the page that follow the knobs. */
final class PlanAnswerPane {
  private static final double FIRST = 30;

  /** Beyond this the heads of a table would break within words. */
  private static final double LARGE_TEXT = 1.3;

  private final Look look;

  @SuppressWarnings({"unused", "FieldCanBeLocal"}) // held so that the look can reach this pane
  private final InvalidationListener watch;

  private final PlanAnswerModel model;
  private final AnswerSentence answer;
  private final Lead lead = new Lead("");
  private final MarginNote orders = new MarginNote(PlanWords.say("note.orders.title"), "");
  private final VBox curve = new VBox();
  private final VBox odds = new VBox(8);
  private final MeasureTablePane measures = new MeasureTablePane();
  private final VBox left = new VBox(4);
  private final VBox strip = new VBox(8);
  private final VBox times = new VBox(4);
  private final TitledPane timesPane = new TitledPane(PlanWords.say("day.times"), times);

  PlanAnswerPane(Look look, PlanAnswerModel model) {
    this.look = look;
    timesPane.setExpanded(false);
    timesPane.setAnimated(false);
    this.model = model;
    this.answer = new AnswerSentence(look, blindlap.wording.AnswerWords.say("question"));
    watch = look.watch(() -> table(this.model.shownProperty().get()));
    model.shownProperty().addListener((o, before, now) -> show(before, now));
    show(null, model.shownProperty().get());
  }

  AnswerSentence answer() {
    return answer;
  }

  Lead lead() {
    return lead;
  }

  MarginNote orders() {
    return orders;
  }

  VBox curve() {
    return curve;
  }

  VBox odds() {
    Label progress = Fields.words("", "note", "second");
    progress.textProperty().bind(model.progressProperty());
    progress.managedProperty().bind(progress.textProperty().isNotEmpty());
    return Fields.section(PlanFieldsView.heading("head.odds"), odds, progress);
  }

  VBox measures() {
    VBox section = Fields.section(PlanFieldsView.heading("head.shows"), measures);
    section.visibleProperty().bind(Bindings.isNotEmpty(measures.getChildren()));
    section.managedProperty().bind(section.visibleProperty());
    return section;
  }

  VBox left() {
    return Fields.section(PlanFieldsView.heading("head.left"), left);
  }

  VBox strip() {
    return strip;
  }

  private void show(
      PlanAnswerModel.@org.jspecify.annotations.Nullable Shown before, PlanAnswerModel.Shown now) {
    answer.say(now.sentence().before(), now.sentence().marked(), now.sentence().after());
    lead.setText(String.join(" ", now.lead()));
    orders.say(String.join(" ", now.orders()));
    if (before == null || !before.curve().equals(now.curve())) {
      picture(curve, now.curve());
      picture(strip, now.strip());
    }
    day(now);
    table(now);
    left.getChildren().setAll(now.left().stream().map(line -> Fields.words(line)).toList());
  }

  private void picture(Pane place, Optional<Drawing> drawing) {
    place.getChildren().clear();
    drawing.ifPresent(d -> place.getChildren().setAll(new PlotView(look, d)));
  }

  private void day(PlanAnswerModel.Shown now) {
    Optional<Node> picture =
        strip.getChildren().stream().filter(PlotView.class::isInstance).findFirst();
    strip.getChildren().clear();
    picture.ifPresent(strip.getChildren()::add);
    now.day().forEach(line -> strip.getChildren().add(Fields.words(line)));
    times.getChildren().setAll(now.times().stream().map(line -> Fields.words(line)).toList());
    if (!now.times().isEmpty()) {
      strip.getChildren().add(timesPane);
    }
  }

  private void table(PlanAnswerModel.Shown now) {
    measures.show(now, look.textScale() <= LARGE_TEXT);
    odds.getChildren().clear();
    if (!now.simulated().isEmpty()) {
      odds.getChildren().add(Fields.words(now.simulated()));
    }
    if (now.odds().isEmpty()) {
      return;
    }
    if (look.textScale() > LARGE_TEXT) {
      now.oddsLines().forEach(line -> odds.getChildren().add(Fields.words(line)));
      odds.getChildren().add(Fields.words(now.oddsSource(), "note", "second"));
      return;
    }
    GridPane table = new GridPane();
    table.getStyleClass().add("plan-table");
    ColumnConstraints first = new ColumnConstraints();
    first.setPercentWidth(FIRST);
    table.getColumnConstraints().add(first);
    List<String> heads = now.heads();
    table.add(Fields.words(heads.get(0), "second", "head"), 0, 0);
    for (int i = 1; i < heads.size(); i++) {
      ColumnConstraints column = new ColumnConstraints();
      column.setHalignment(HPos.RIGHT);
      column.setHgrow(Priority.ALWAYS);
      column.setPercentWidth((100.0 - FIRST) / (heads.size() - 1));
      table.getColumnConstraints().add(column);
      Label head = Fields.words(heads.get(i), "second", "head");
      head.setTextAlignment(javafx.scene.text.TextAlignment.RIGHT);
      table.add(head, i, 0);
    }
    for (int row = 0; row < now.odds().size(); row++) {
      List<String> cells = now.odds().get(row);
      for (int i = 0; i < cells.size(); i++) {
        table.add(Fields.words(cells.get(i)), i, row + 1);
      }
    }
    odds.getChildren().addAll(table, Fields.words(now.oddsSource(), "note", "second"));
  }
}

package blindlap.screen.plan;

import blindlap.plot.surface.Drawing;
import blindlap.screen.part.AnswerSentence;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Lead;
import blindlap.screen.part.Look;
import blindlap.screen.part.MarginNote;
import blindlap.screen.part.PlotView;
import blindlap.wording.AnswerWords;
import blindlap.wording.PlanWords;
import java.util.List;
import java.util.Optional;
import javafx.beans.InvalidationListener;
import javafx.beans.binding.Bindings;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TitledPane;
import javafx.scene.layout.Pane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** What the day can show: the sections of the page that follow the knobs; none stands empty. */
final class PlanAnswerPane {
  private final Look look;

  @SuppressWarnings({"unused", "FieldCanBeLocal"}) // held so that the look can reach this pane
  private final InvalidationListener watch;

  private final PlanAnswerModel model;
  private final AnswerSentence answer;
  private final Lead lead = new Lead("");
  private final MarginNote swaps = new MarginNote(PlanWords.say("note.swaps.title"), "");
  private final Label curveTitle = Fields.words("", "strong", "note");
  private final VBox curve = new VBox();
  private final OddsTablePane odds;
  private final TrialsTablePane trials = new TrialsTablePane();
  private final MeasureTablePane measures = new MeasureTablePane();
  private final VBox left = new VBox(4);
  private final VBox experts = new VBox(4);
  private final VBox strip = new VBox(8);
  private final VBox times = new VBox(4);
  private final TitledPane timesPane = PlanFieldsView.fold("day.times", times);

  PlanAnswerPane(Look look, PlanAnswerModel model) {
    this.look = look;
    this.model = model;
    this.odds = new OddsTablePane(look);
    this.answer = new AnswerSentence(look, AnswerWords.say("question"));
    lead.managedProperty().bind(lead.textProperty().isNotEmpty());
    watch = look.watch(() -> table(this.model.shownProperty().get()));
    model.shownProperty().addListener((o, before, now) -> show(before, now));
    show(null, model.shownProperty().get());
  }

  AnswerSentence answer() {
    return answer;
  }

  /** What is going on while the answer is worked out, and the key that stops it. */
  VBox waiting() {
    PlanWaiting waiting = model.waiting();
    Label words = Fields.words("", "note");
    words.textProperty().bind(waiting.wordsProperty());
    Button stop = Fields.button(AnswerWords.say("waiting.stop"), waiting::stop);
    Button begin = Fields.button(AnswerWords.say("waiting.begin"), waiting::begin);
    stop.visibleProperty().bind(waiting.workingProperty());
    begin.visibleProperty().bind(waiting.stoppedProperty());
    stop.managedProperty().bind(stop.visibleProperty());
    begin.managedProperty().bind(begin.visibleProperty());
    VBox row = new VBox(8, words, stop, begin);
    row.getStyleClass().add("waiting");
    row.visibleProperty().bind(words.textProperty().isNotEmpty());
    row.managedProperty().bind(row.visibleProperty());
    return row;
  }

  Lead lead() {
    return lead;
  }

  MarginNote swaps() {
    return swaps;
  }

  VBox curve() {
    return shownWith(
        curve, Fields.section(PlanFieldsView.heading("head.curve"), curveTitle, curve));
  }

  VBox odds() {
    Label progress = Fields.words("", "note", "second");
    progress.textProperty().bind(model.progressProperty());
    progress.managedProperty().bind(progress.textProperty().isNotEmpty());
    return shownWith(odds, Fields.section(PlanFieldsView.heading("head.odds"), odds, progress));
  }

  /** What other numbers of trials can show. */
  VBox trials() {
    return shownWith(trials, Fields.section(PlanFieldsView.heading("head.trials"), trials));
  }

  VBox measures() {
    return shownWith(measures, Fields.section(PlanFieldsView.heading("head.shows"), measures));
  }

  VBox left() {
    return shownWith(left, Fields.section(PlanFieldsView.heading("head.left"), left));
  }

  /** What needs statistics, behind its title. */
  VBox statistician() {
    return shownWith(experts, Fields.section(PlanFieldsView.fold("head.statistician", experts)));
  }

  VBox strip() {
    return strip;
  }

  /** A heading without anything under it is not shown. */
  private static VBox shownWith(Pane content, VBox section) {
    section.visibleProperty().bind(Bindings.isNotEmpty(content.getChildren()));
    section.managedProperty().bind(section.visibleProperty());
    return section;
  }

  private void show(PlanAnswerModel.@Nullable Shown before, PlanAnswerModel.Shown now) {
    answer.say(now.sentence().before(), now.sentence().marked(), now.sentence().after());
    lead.setText(String.join(" ", now.lead()));
    swaps.say(String.join(" ", now.swaps()));
    swaps.setVisible(!now.swaps().isEmpty());
    swaps.setManaged(!now.swaps().isEmpty());
    curveTitle.setText(now.curveTitle());
    if (before == null || !before.curve().equals(now.curve())) {
      picture(curve, now.curve());
    }
    if (before == null || !before.strip().equals(now.strip())) {
      picture(strip, now.strip());
    }
    day(now);
    table(now);
    lines(left, now.left());
    lines(experts, now.statistician());
  }

  /** What is the same as before stays: a page is laid out anew at every letter that is typed. */
  private static void lines(VBox place, List<String> lines) {
    if (lines.equals(place.getUserData())) {
      return;
    }
    place.setUserData(lines);
    place.getChildren().setAll(lines.stream().map(line -> Fields.words(line)).toList());
  }

  private void picture(Pane place, Optional<Drawing> drawing) {
    place.getChildren().clear();
    drawing.ifPresent(d -> place.getChildren().setAll(new PlotView(look, d)));
  }

  private void day(PlanAnswerModel.Shown now) {
    Optional<Node> picture =
        strip.getChildren().stream().filter(PlotView.class::isInstance).findFirst();
    lines(times, now.times());
    boolean ofTrials = !now.trials().rows().isEmpty();
    timesPane.setText(PlanWords.say(ofTrials ? "day.times.trials" : "day.times"));
    List<Object> same = List.of(picture, now.day(), now.stint(), now.times().isEmpty());
    if (same.equals(strip.getUserData())) {
      return;
    }
    strip.setUserData(same);
    strip.getChildren().clear();
    picture.ifPresent(strip.getChildren()::add);
    now.day().forEach(line -> strip.getChildren().add(Fields.words(line)));
    if (!now.stint().isEmpty()) {
      strip.getChildren().add(Fields.words(now.stint()));
    }
    if (!now.times().isEmpty()) {
      strip.getChildren().add(timesPane);
    }
  }

  private void table(PlanAnswerModel.Shown now) {
    measures.show(now, !look.stacked());
    trials.show(now.trials(), !look.stacked());
    odds.show(now);
  }
}

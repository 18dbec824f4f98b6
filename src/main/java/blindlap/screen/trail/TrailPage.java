package blindlap.screen.trail;

import blindlap.desk.TrailDraft;
import blindlap.screen.part.AnswerSentence;
import blindlap.screen.part.Caution;
import blindlap.screen.part.Dialogs;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Lead;
import blindlap.screen.part.Look;
import blindlap.screen.part.PageGrid;
import blindlap.wording.TrailWords;
import blindlap.wording.day.Words;
import java.util.List;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.VBox;

/** The Trail page: where the clock starts and stops, on a drawing of the way. */
public final class TrailPage extends BorderPane {
  private static final double LOW = 820;

  private final AnswerSentence answer;
  private final Lead lead = new Lead("");

  public TrailPage(Look look, TrailModel model, Dialogs dialogs) {
    this.answer = new AnswerSentence(look, TrailWords.say("page.question"), 1);
    PageGrid page = new PageGrid(look);
    page.addWide(new VBox(8, answer, lead));
    TrailFieldsView fields = new TrailFieldsView(look, model, dialogs);
    page.addWide(
        new TrailColumnsView(look, new TrailPictureView(look, model, fields::focusGate), fields));
    page.addWide(
        new VBox(
            12,
            new Caution(Words.of("report").say("caution"), Words.of("cautions").say("ride")),
            Fields.words(TrailWords.say("page.why"), "note", "second")));
    setCenter(page);
    getStyleClass().add("trail-page");
    heightProperty().addListener((o, before, now) -> answer.low(now.doubleValue() < LOW));
    model.hand().sightProperty().addListener((o, before, now) -> show(now));
    show(model.hand().sightProperty().get());
    setOnKeyPressed(
        e -> {
          if (e.isShortcutDown() && e.getCode() == KeyCode.Z) {
            model.hand().takeBack();
            e.consume();
          }
        });
  }

  private void show(TrailSight now) {
    int gates = now.draft().map(draft -> draft.gates().size()).orElse(0);
    if (now.draft().isEmpty()) {
      say("page.none");
      lead.setText(TrailWords.say("page.lead.none"));
      return;
    }
    if (gates < 2) {
      say("page.gates");
      lead.setText(TrailWords.say("page.lead.gates"));
      return;
    }
    List<TrailWords.Said> said = now.shape().orElseThrow().said();
    String start = said.get(0).name();
    String finish = said.get(gates - 1).name();
    String about = TrailWords.about(said.get(0), said.get(gates - 1));
    if (about.isEmpty()) {
      answer.say(
          "",
          TrailWords.say("page.answer.unknown.marked", start, finish),
          TrailWords.say("page.answer.unknown.after"));
    } else {
      answer.say(
          TrailWords.say("page.answer.before", start, finish),
          TrailWords.say("page.answer.marked", about),
          TrailWords.say("page.answer.after"));
    }
    lead.setText(lead(now, about.isEmpty() ? "page.lead.drawn" : "page.lead"));
  }

  private void say(String key) {
    answer.say(
        TrailWords.say(key + ".before"),
        TrailWords.say(key + ".marked"),
        TrailWords.say(key + ".after"));
  }

  private static String lead(TrailSight now, String key) {
    TrailDraft draft = now.draft().orElseThrow();
    String version = now.kept().map(title -> String.valueOf(title.number())).orElse("");
    String state =
        now.kept().isEmpty()
            ? TrailWords.say("page.state.new")
            : TrailWords.say(now.changed() ? "page.state.changed" : "page.state.kept", version);
    return TrailWords.say(
        key,
        draft.name().isEmpty() ? TrailWords.say("page.map") : draft.name(),
        draft.gates().size(),
        TrailWords.metres(Math.round(draft.length())),
        state);
  }
}

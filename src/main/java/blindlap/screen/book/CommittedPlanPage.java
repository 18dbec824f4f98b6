package blindlap.screen.book;

import static blindlap.screen.part.ReviewParts.lines;
import static blindlap.screen.part.ReviewParts.words;

import blindlap.screen.part.AnswerSentence;
import blindlap.screen.part.Caution;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Fold;
import blindlap.screen.part.Lead;
import blindlap.screen.part.Look;
import blindlap.screen.part.PageGrid;
import blindlap.screen.part.RoomFrame;
import blindlap.wording.CommittedPlanWords;
import blindlap.wording.PlanSummary;
import blindlap.wording.day.Words;
import java.util.List;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextArea;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.VBox;

/** The room in which a committed plan is read: everything that was fixed, and nothing sealed. */
final class CommittedPlanPage extends BorderPane {
  private static final int ROWS = 24;

  private final Look look;
  private final CommittedPlanModel model;
  private final PageGrid page;
  private final RoomFrame frame;

  CommittedPlanPage(Look look, CommittedPlanModel model, Runnable away) {
    this.look = look;
    this.model = model;
    this.page = new PageGrid(look);
    this.frame = new RoomFrame(page, away);
    setCenter(frame);
    model.viewProperty().addListener((o, before, now) -> show(now));
    show(model.viewProperty().get());
  }

  void enter() {
    model.again();
    frame.enter();
  }

  private void show(CommittedPlanModel.View view) {
    page.clear();
    if (!view.trouble().isEmpty()) {
      page.add(new VBox(words(view.trouble(), "strong")));
      return;
    }
    if (view.parts().isEmpty()) {
      return;
    }
    AnswerSentence answer = new AnswerSentence(look, CommittedPlanWords.say("question"));
    answer.say(view.headline().before(), view.headline().phrase(), view.headline().after());
    VBox head = new VBox(16, answer);
    view.lead().forEach(line -> head.getChildren().add(new Lead(line)));
    head.getChildren().add(copy());
    page.add(head);
    page.add(fingerprint(view.fingerprint()));
    for (PlanSummary.Part part : view.parts()) {
      page.add(new VBox(10, words(part.title(), "h2"), lines(part.lines())));
    }
    page.add(file(view.file()));
    page.add(
        new VBox(
            new Caution(Words.of("report").say("caution"), Words.of("cautions").say("short"))));
  }

  private VBox copy() {
    Button copy = Fields.button(CommittedPlanWords.say("copy"), model::copy);
    copy.setId("copy-plan");
    return new VBox(6, copy, words(CommittedPlanWords.say("copy.note"), "note", "second"));
  }

  private static VBox fingerprint(List<String> lines) {
    Label number = words(lines.get(0), "field-title");
    number.setId("fingerprint");
    VBox box = new VBox(10, words(CommittedPlanWords.say("fingerprint"), "h2"), number);
    lines.subList(1, lines.size()).forEach(line -> box.getChildren().add(words(line)));
    return box;
  }

  private static VBox file(String text) {
    TextArea area = new TextArea(text);
    area.setEditable(false);
    area.setPrefRowCount(ROWS);
    area.setAccessibleText(CommittedPlanWords.say("file"));
    Fields.leaveByTab(area);
    return new VBox(
        new Fold(
            CommittedPlanWords.say("file"),
            new VBox(8, words(CommittedPlanWords.say("file.note"), "note", "second"), area)));
  }
}

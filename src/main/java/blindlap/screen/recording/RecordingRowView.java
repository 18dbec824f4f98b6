package blindlap.screen.recording;

import blindlap.desk.Settling;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.wording.SettlingRow;
import blindlap.wording.SettlingRow.Match;
import blindlap.wording.SettlingWords;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.IntConsumer;
import javafx.geometry.VPos;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;

/** A lap and its pass in one line, with what a person may say of it; more lines with large text. */
final class RecordingRowView extends FlowPane {
  private static final double NARROW = 28;
  private static final double CODE = 44;
  private static final double TIME = 112;
  private static final double PASS = 58;
  private static final double MATCH = 190;
  private static final double MATCH_ALONE = 420;
  private static final double SAID = 382;

  private final Look look;

  /** What may be said, together, in the line of the pass or below it. */
  private final FlowPane said = new FlowPane(8, 4);

  /**
   * @param answered true if a person said something of the pass
   * @param laps to choose from
   * @param answer is told what is said of a pass
   * @param change takes it back
   */
  RecordingRowView(
      Look look,
      SettlingRow row,
      boolean answered,
      List<Integer> laps,
      BiConsumer<Integer, Settling.Answer> answer,
      IntConsumer change) {
    super(12, 4);
    this.look = look;
    getStyleClass().add("record-row");
    setRowValignment(VPos.CENTER);
    Integer lap = row.lap();
    Integer code = row.code();
    String time = SettlingWords.time(row);
    String match = SettlingWords.match(row);
    add(lap == null ? "?" : String.valueOf(lap), NARROW, "strong");
    add(code == null ? "" : String.valueOf(code), CODE, "strong");
    add(time, TIME, "second");
    add(row.pass() == 0 ? "" : SettlingWords.say("page.pass", row.pass()), PASS, "second");
    add(match, row.match().waits() || answered ? MATCH : MATCH_ALONE, "second");
    setAccessibleText(
        lap == null || code == null
            ? SettlingWords.say("page.row.extra", row.pass(), time, match)
            : SettlingWords.say("page.row", lap, code, time, match));
    getChildren().add(said);
    said.prefWrapLengthProperty().bind(look.px(SAID));
    if (row.match().waits()) {
      getStyleClass().add("waits");
      asked(row, laps, answer);
    } else if (answered) {
      button("page.change", row, () -> change.accept(row.pass()));
    }
  }

  private void add(String words, double wide, String style) {
    Label label = Fields.words(words, style);
    label.minWidthProperty().bind(look.px(wide));
    label.prefWidthProperty().bind(look.px(wide));
    getChildren().add(label);
  }

  private void asked(
      SettlingRow row, List<Integer> laps, BiConsumer<Integer, Settling.Answer> answer) {
    int pass = row.pass();
    if (row.match() == Match.DOUBTFUL) {
      button("page.keep", row, () -> answer.accept(pass, Settling.Answer.KEEP));
      button("page.out", row, () -> answer.accept(pass, Settling.Answer.LEAVE_OUT));
    } else {
      if (row.match() == Match.PROPOSED) {
        button("page.yes", row, () -> answer.accept(pass, Settling.Answer.KEEP));
      }
      button("page.nolap", row, () -> answer.accept(pass, Settling.Answer.NO_LAP));
    }
    ComboBox<Integer> which = new ComboBox<>();
    which.getItems().setAll(laps);
    which.setPromptText(SettlingWords.say("page.lap"));
    which.setAccessibleText(
        SettlingWords.say("page.pass", pass) + ": " + SettlingWords.say("page.lap"));
    which.setOnAction(
        e -> {
          Integer chosen = which.getValue();
          if (chosen != null) {
            answer.accept(pass, Settling.Answer.lap(chosen));
          }
        });
    said.getChildren().add(which);
  }

  private void button(String key, SettlingRow row, Runnable work) {
    Button button = Fields.button(SettlingWords.say(key), work);
    button.setAccessibleText(
        SettlingWords.say("page.pass", row.pass()) + ": " + SettlingWords.say(key));
    said.getChildren().add(button);
  }
}

package blindlap.screen.book;

import blindlap.screen.part.Look;
import blindlap.screen.part.MarginNote;
import blindlap.screen.part.PlotView;
import blindlap.wording.NoiseWords;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** The rider's noise in the margin: words, picture, what days there can show, others. */
final class NoiseMarginView extends VBox {
  private final Look look;

  NoiseMarginView(Look look, NotebookModel model) {
    super(28);
    this.look = look;
    model.noiseProperty().addListener((o, before, now) -> show(now));
    show(model.noiseProperty().get());
  }

  private void show(NoiseNote note) {
    getChildren().clear();
    if (note.title().isEmpty()) {
      return;
    }
    VBox noise = new VBox(8, new MarginNote(note.title(), note.words()));
    note.picture().ifPresent(drawing -> noise.getChildren().add(new PlotView(look, drawing)));
    getChildren().add(noise);
    if (!note.shows().isEmpty()) {
      VBox shows = new VBox(new MarginNote(NoiseWords.say("shows"), NoiseWords.say("shows.note")));
      note.shows().forEach(row -> shows.getChildren().add(row(row)));
      getChildren().add(shows);
    }
    if (!note.elsewhere().isEmpty()) {
      getChildren()
          .add(new MarginNote(NoiseWords.say("elsewhere"), String.join("\n", note.elsewhere())));
    }
  }

  private static HBox row(NoiseNote.Shows row) {
    Label stints = new Label(row.stints());
    Label difference = new Label(row.difference());
    difference.getStyleClass().add("strong");
    Region gap = new Region();
    HBox.setHgrow(gap, Priority.ALWAYS);
    HBox line = new HBox(stints, gap, difference);
    line.getStyleClass().add("ruled");
    return line;
  }
}

package blindlap.screen.review;

import static blindlap.screen.part.ReviewParts.words;

import blindlap.plan.Sector;
import blindlap.wording.SectorVoidWords;
import java.util.List;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import org.jspecify.annotations.Nullable;

/** Sectors that are void alone: those that stand, and one more while the review is open. */
final class SectorVoidsView extends VBox {
  private final SectorVoids voids;

  SectorVoidsView(SectorVoids voids, boolean closed) {
    super(10);
    this.voids = voids;
    getChildren().add(words(SectorVoidWords.say("sector.title"), "h2"));
    if (!closed) {
      getChildren().add(words(SectorVoidWords.say("sector.why"), "second"));
    }
    for (SectorVoids.Standing standing : voids.standing()) {
      FlowPane line = new FlowPane(8, 4, words(standing.words()));
      if (!closed) {
        Button keep = new Button(SectorVoidWords.say("sector.keep"));
        keep.setAccessibleText(standing.words() + ": " + SectorVoidWords.say("sector.keep"));
        keep.setOnAction(e -> voids.takeBack(standing));
        line.getChildren().add(keep);
      }
      getChildren().add(line);
    }
    if (!closed) {
      getChildren().add(another());
    }
  }

  private FlowPane another() {
    ComboBox<Integer> lap = box("sector.lap", voids.laps());
    ComboBox<Sector> sector = box("sector.which", voids.sectors());
    sector.setConverter(
        new StringConverter<Sector>() {
          @Override
          public String toString(@Nullable Sector value) {
            return value == null ? "" : SectorVoidWords.name(value);
          }

          @Override
          public @Nullable Sector fromString(String text) {
            return null;
          }
        });
    ComboBox<String> event = box("sector.event", BlindReviewModel.events());
    Button declare = new Button(SectorVoidWords.say("sector.do"));
    declare
        .disableProperty()
        .bind(
            lap.valueProperty()
                .isNull()
                .or(sector.valueProperty().isNull())
                .or(event.valueProperty().isNull()));
    declare.setOnAction(e -> voids.declare(lap.getValue(), sector.getValue(), event.getValue()));
    return new FlowPane(12, 8, lap, sector, event, declare);
  }

  private static <T> ComboBox<T> box(String key, List<T> values) {
    ComboBox<T> box = new ComboBox<>();
    box.getItems().setAll(values);
    box.setPromptText(SectorVoidWords.say(key));
    box.setAccessibleText(SectorVoidWords.say("sector.title") + ": " + SectorVoidWords.say(key));
    return box;
  }
}

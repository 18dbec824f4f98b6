package blindlap.screen.part;

import static blindlap.screen.part.ReviewParts.lines;
import static blindlap.screen.part.ReviewParts.words;

import java.util.List;
import javafx.scene.Node;
import javafx.scene.layout.VBox;

/**
 * A row with a name, what it is about, and sentences under one another.
 *
 * @param mark what must be known of it, below its name; may be empty
 */
public record ListedRow(String name, String mark, String about, List<String> sentences)
    implements RecordTable.Row {
  public ListedRow {
    sentences = List.copyOf(sentences);
  }

  @Override
  public List<Node> cells() {
    return List.of(named(), words(about), lines(sentences));
  }

  @Override
  public List<Node> stacked() {
    return List.of(named(), words(about, "note"), lines(sentences));
  }

  private VBox named() {
    VBox named = new VBox(2, words(name, "strong"));
    if (!mark.isEmpty()) {
      named.getChildren().add(words(mark, "note"));
    }
    return named;
  }
}

package blindlap.screen.review;

import static blindlap.screen.part.ReviewParts.lines;
import static blindlap.screen.part.ReviewParts.words;

import blindlap.screen.part.Look;
import blindlap.screen.part.RecordTable;
import blindlap.wording.ProfilesFoundWords;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.layout.VBox;

/**
 * Who should look at what: a row a profile, with the finding's own sentences. With large text name,
 * measures and sentences stand below one another.
 */
final class ProfilesFoundView extends VBox {
  private static final double[] SHARES = {20, 20, 60};

  ProfilesFoundView(Look look, ProfilesFoundWords words) {
    setSpacing(10);
    setId("profiles-found");
    List<Profile> rows = words.rows().stream().map(Profile::new).toList();
    getChildren()
        .setAll(
            words(ProfilesFoundWords.title(), "h2"),
            new RecordTable(ProfilesFoundWords.heads(), look, SHARES, rows),
            words(ProfilesFoundWords.note(), "note", "second"));
  }

  private record Profile(ProfilesFoundWords.Row row) implements RecordTable.Row {
    @Override
    public List<Node> cells() {
      return List.of(name(), words(row.measures()), lines(row.sentences()));
    }

    @Override
    public List<Node> stacked() {
      return List.of(name(), words(row.measures(), "note"), lines(row.sentences()));
    }

    private VBox name() {
      VBox name = new VBox(2, words(row.name(), "strong"));
      if (!row.mark().isEmpty()) {
        name.getChildren().add(words(row.mark(), "note"));
      }
      return name;
    }
  }
}
